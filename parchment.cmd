@echo off
rem SPDX-License-Identifier: GPL-3.0-or-later
rem Finds Java, builds what is missing or older than its sources, and hands over; everything else is in Java. The same as 'parchment' does elsewhere.
rem
rem No command in a 'for /f' below begins with a quote or holds one: 'for /f' hands its command to 'cmd /c', which takes away the first and the last quote
rem of a line that begins with one and holds more than two ('cmd /?', on /C), so that a quoted path with arguments would not be found. Java is therefore
rem asked from within its own folder, by a name without blanks.
setlocal enableextensions disabledelayedexpansion
set "home=%~dp0"
set "home=%home:~0,-1%"

set "java="
set "bin="
set "version="
set "seen="
set "candidate=%home%\java\bin\java.exe"
call :try
rem JAVA_HOME is often written with quotes around it.
if defined JAVA_HOME set "candidate=%JAVA_HOME:"=%\bin\java.exe"
if not defined java if defined JAVA_HOME call :try
for %%j in (java.exe) do set "candidate=%%~$PATH:j"
if not defined java call :try
if not defined java goto :nojava

rem In a release the jar lies here; in a clone it is built.
set "jar=%home%\parchment-kernel.jar"
if not exist "%home%\pom.xml" goto :start
set "jar=%home%\kernel-ext\target\parchment-kernel.jar"
rem The file 'built' is written when all of a build is there; one that was stopped leaves the file 'unfinished', and nothing of it is trusted.
set "built=%home%\kernel-ext\target\built"
set "unfinished=%home%\target\unfinished"
if exist "%unfinished%" rmdir /s /q "%home%\src\library\target" 2>nul
if exist "%unfinished%" rmdir /s /q "%home%\src\roastery\target" 2>nul
if exist "%unfinished%" rmdir /s /q "%home%\kernel-ext\target" 2>nul
if not exist "%jar%" goto :build
if not exist "%built%" goto :build
rem What of the sources is newer than the build; where there is no PowerShell to ask, the build is taken as it is.
powershell -NoProfile -Command "$b = (Get-Item -LiteralPath $env:built).LastWriteTime; foreach ($p in 'pom.xml', 'src\pom.xml', 'src\library\pom.xml', 'src\library\main', 'src\roastery\pom.xml', 'src\roastery\main', 'kernel-ext\pom.xml', 'kernel-ext\src\main') { foreach ($f in Get-ChildItem -Recurse -File -LiteralPath (Join-Path $env:home $p)) { if ($f.LastWriteTime -gt $b) { exit 3 } } }" 2>nul
if %errorlevel% neq 3 goto :start

:build
set "maven="
for %%m in (mvn.cmd) do set "maven=%%~$PATH:m"
if not defined maven goto :nomaven
echo Building Parchment; the first time this fetches what it needs and takes a minute or two ... 1>&2
if not exist "%built%" rmdir /s /q "%home%\kernel-ext\target\lib" 2>nul
if not exist "%home%\target" mkdir "%home%\target"
rem Maven takes the Java that was found, which need not be the one that JAVA_HOME names.
pushd "%bin%"
for /f "tokens=1,* delims== " %%a in ('.\java.exe -XshowSettings:properties -version 2^>^&1') do if "%%a"=="java.home" set "JAVA_HOME=%%b"
popd
type nul >"%unfinished%"
pushd "%home%"
call mvn -q -B -DskipTests -Dspotless.check.skip=true package 1>&2
if errorlevel 1 (
    popd
    del "%unfinished%" "%built%" 2>nul
    echo The build failed; the lines above say why. 1>&2
    exit /b 2
)
popd
move /y "%unfinished%" "%built%" >nul

:start
set "native="
if %version% geq 24 set "native=--enable-native-access=ALL-UNNAMED"
"%java%" %native% -Djava.awt.headless=true -Dfile.encoding=UTF-8 "-Dparchment.home=%home%" -jar "%jar%" %*
exit /b %errorlevel%

rem Takes the candidate if it is a Java from 17 on that has its compiler: a notebook's cells are compiled as they run. A line of the list of modules reads
rem 'java.base@17.0.15'; a Java before 9 has no such list.
:try
if not defined candidate exit /b
if not exist "%candidate%" exit /b
set "number="
set "jshell="
for %%d in ("%candidate%") do pushd "%%~dpd"
for /f "tokens=1-3 delims=@." %%a in ('.\java.exe --list-modules 2^>nul') do (
    if "%%a.%%b"=="java.base" set "number=%%c"
    if "%%a.%%b"=="jdk.jshell" set "jshell=yes"
)
set "here=%cd%"
popd
if not defined number set "number=8 or earlier"
set "seen=%seen% %candidate% (version %number%)"
if "%number%"=="8 or earlier" exit /b
if not defined jshell exit /b
if %number% lss 17 exit /b
set "java=%candidate%"
set "bin=%here%"
set "version=%number%"
exit /b

:nojava
echo Parchment needs a Java development kit ^(JDK^), version 17 or later, in JAVA_HOME or on the PATH. 1>&2
if defined seen setlocal enabledelayedexpansion
if defined seen echo Found only:!seen! 1>&2
echo Install one, for example from https://adoptium.net, and Apache Maven unless this is a release. 1>&2
exit /b 2

:nomaven
echo Parchment must be built first, and that needs Apache Maven ^(the command mvn^). 1>&2
echo See https://maven.apache.org/install.html 1>&2
exit /b 2
