/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Stands in for java.exe where parchment.cmd is tried: says which Java it is, or with which words it was started. Beside it lie version.txt and,
   for a Java without a compiler, the file nojshell. Exits with 7, so that a code that got lost is seen. */
#include <stdio.h>
#include <string.h>
#include <windows.h>

static char folder[1024];

static FILE *beside(const char *name) {
    char path[1200];
    sprintf(path, "%s\\%s", folder, name);
    return fopen(path, "r");
}

int main(int count, char **words) {
    char version[64] = "17.0.15", here[1024];
    GetModuleFileName(NULL, folder, sizeof folder);
    *strrchr(folder, '\\') = 0;
    FILE *said = beside("version.txt");
    if (said) {
        fscanf(said, "%63s", version);
        fclose(said);
    }
    if (count > 1 && !strcmp(words[1], "--list-modules")) {
        if (!strncmp(version, "1.", 2)) {
            fprintf(stderr, "Unrecognized option: --list-modules\n");
            return 1;
        }
        printf("java.base@%s\njava.desktop@%s\n", version, version);
        if (!beside("nojshell")) {
            printf("jdk.jshell@%s\n", version);
        }
        return 0;
    }
    if (count > 1 && !strcmp(words[1], "-XshowSettings:properties")) {
        fprintf(stderr, "Property settings:\n    java.class.path = \n    java.home = C:\\Where it lives\\jdk (x86)\n");
        return 0;
    }
    GetCurrentDirectory(sizeof here, here);
    printf("Java %s in %s\n", version, here);
    for (int i = 1; i < count; i++) {
        printf("[%s]\n", words[i]);
    }
    return 7;
}
