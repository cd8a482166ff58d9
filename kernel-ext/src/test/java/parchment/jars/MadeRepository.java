package parchment.jars;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/** A repository of invented libraries on the disk, laid out and with checksums as Maven's are; each library has one class with one method. */
public final class MadeRepository {
    private final Path folder;

    public MadeRepository(Path folder) {
        this.folder = folder;
    }

    public Path folder() {
        return folder;
    }

    /** Adds a library whose class {@code artifact.Says} has a static method {@code word()} that returns the version. */
    public Path add(String group, String artifact, String version, String rest) throws IOException {
        Path jar = file(group, artifact, version, "jar");
        jar(jar, artifact + "/Says.class", says(artifact + "/Says", version, Opcodes.V17));
        Path pom = file(group, artifact, version, "pom");
        Files.writeString(pom, """
                <project>
                  <modelVersion>4.0.0</modelVersion>
                  <groupId>%s</groupId>
                  <artifactId>%s</artifactId>
                  <version>%s</version>
                  <licenses><license><name>Invented licence</name></license></licenses>
                  %s
                </project>
                """.formatted(group, artifact, version, rest));
        sign(jar);
        sign(pom);
        return jar;
    }

    /** Writes the list of versions that a repository keeps of each library. */
    public void list(String group, String artifact, String... versions) throws IOException {
        StringBuilder all = new StringBuilder();
        for (String version : versions) {
            all.append("<version>").append(version).append("</version>");
        }
        Path list = folder.resolve(group.replace('.', '/')).resolve(artifact).resolve("maven-metadata.xml");
        Files.writeString(
                list,
                "<metadata><groupId>" + group + "</groupId><artifactId>" + artifact
                        + "</artifactId><versioning><versions>" + all + "</versions></versioning></metadata>");
        sign(list);
    }

    /** Returns what a description says that a library needs. */
    public static String needs(String group, String artifact, String version, String scope) {
        return "<dependency><groupId>" + group + "</groupId><artifactId>" + artifact + "</artifactId><version>"
                + version + "</version><scope>" + scope + "</scope></dependency>";
    }

    Path file(String group, String artifact, String version, String extension) throws IOException {
        Path place = Files.createDirectories(
                folder.resolve(group.replace('.', '/')).resolve(artifact).resolve(version));
        return place.resolve(artifact + "-" + version + "." + extension);
    }

    static void sign(Path file) throws IOException {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-1").digest(Files.readAllBytes(file));
            Files.writeString(
                    file.resolveSibling(file.getFileName() + ".sha1"),
                    HexFormat.of().formatHex(digest),
                    StandardCharsets.US_ASCII);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Writes a jar of the entries given in turn as name and bytes. */
    public static Path jar(Path jar, Object... namesAndBytes) throws IOException {
        try (OutputStream file = Files.newOutputStream(jar);
                ZipOutputStream zip = new ZipOutputStream(file)) {
            for (int i = 0; i < namesAndBytes.length; i += 2) {
                zip.putNextEntry(new ZipEntry((String) namesAndBytes[i]));
                zip.write((byte[]) namesAndBytes[i + 1]);
            }
        }
        return jar;
    }

    /** Returns a class with a static method {@code word()} that returns a text. */
    public static byte[] says(String name, String word, int level) {
        ClassWriter writer = new ClassWriter(0);
        writer.visit(level, Opcodes.ACC_PUBLIC, name, null, "java/lang/Object", null);
        MethodVisitor method =
                writer.visitMethod(Opcodes.ACC_PUBLIC | Opcodes.ACC_STATIC, "word", "()Ljava/lang/String;", null, null);
        method.visitCode();
        method.visitLdcInsn(word);
        method.visitInsn(Opcodes.ARETURN);
        method.visitMaxs(1, 0);
        method.visitEnd();
        writer.visitEnd();
        return writer.toByteArray();
    }
}
