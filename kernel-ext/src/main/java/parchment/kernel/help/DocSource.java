package parchment.kernel.help;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.lang.model.element.Element;
import javax.lang.model.element.ExecutableElement;
import javax.lang.model.element.TypeElement;
import javax.lang.model.element.VariableElement;
import javax.tools.JavaFileObject;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;

/**
 * One source file, read for its comments and the names of its parameters only. The library carries its sources inside its jar; a file
 * is read when somebody asks about a name in it, and nothing of it is kept.
 */
final class DocSource {
    private static final String SOURCES = "/META-INF/sources/";

    private final CompilationUnitTree unit;
    private final DocTrees trees;

    private DocSource(CompilationUnitTree unit, DocTrees trees) {
        this.unit = unit;
        this.trees = trees;
    }

    /** Returns the library's source file that declares the element; empty if it is not the library's. */
    static Optional<DocSource> of(Element element) {
        TypeElement top = outermost(element);
        return top == null
                ? Optional.empty()
                : text(top.getQualifiedName().toString()).map(DocSource::parse);
    }

    /** Returns the text of the library's source file of a top-level type, by the type's whole name. */
    static Optional<String> text(String type) {
        try (InputStream in = Showable.class.getResourceAsStream(SOURCES + type.replace('.', '/') + ".java")) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("The library's own jar cannot be read.", e);
        }
    }

    /** Reads a source file. */
    static DocSource parse(String source) {
        JavacTask task = (JavacTask) ToolProvider.getSystemJavaCompiler()
                .getTask(null, null, ignored -> {}, List.of("-proc:none"), null, List.of(new SourceText(source)));
        try {
            CompilationUnitTree unit = task.parse().iterator().next();
            return new DocSource(unit, DocTrees.instance(task));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns the comment of a type of the file by its simple name, or null. */
    @Nullable
    DocCommentTree commentOfType(String simpleName) {
        TreePath path = typeIn(new TreePath(unit), simpleName);
        return path == null ? null : trees.getDocCommentTree(path);
    }

    /** Returns the comment of an element that the file declares, or null. */
    @Nullable
    DocCommentTree comment(Element element) {
        TreePath path = pathOf(element);
        return path == null ? null : trees.getDocCommentTree(path);
    }

    /** Returns the names of a method's parameters, or null if it is not written out in the file. */
    @Nullable
    List<String> parameters(ExecutableElement method) {
        TreePath path = pathOf(method);
        return path != null
                        && path.getLeaf() instanceof MethodTree tree
                        && !tree.getParameters().isEmpty()
                ? tree.getParameters().stream().map(p -> p.getName().toString()).toList()
                : null;
    }

    /** Returns what a constant of the file is set to, as written, or its name if that cannot be told. */
    String constant(String name) {
        for (Tree type : unit.getTypeDecls()) {
            if (type instanceof ClassTree declared) {
                for (Tree member : declared.getMembers()) {
                    if (member instanceof VariableTree field
                            && field.getName().contentEquals(name)
                            && field.getInitializer() != null) {
                        return field.getInitializer().toString();
                    }
                }
            }
        }
        return name;
    }

    private @Nullable TreePath pathOf(Element element) {
        if (element instanceof TypeElement type) {
            Element outer = type.getEnclosingElement();
            TreePath within = outer instanceof TypeElement ? pathOf(outer) : new TreePath(unit);
            return within == null ? null : typeIn(within, type.getSimpleName().toString());
        }
        Element owner = element.getEnclosingElement();
        TreePath within = owner == null ? null : pathOf(owner);
        if (within == null || !(within.getLeaf() instanceof ClassTree declared)) {
            return null;
        }
        for (Tree member : declared.getMembers()) {
            if (isSame(element, member)) {
                return new TreePath(within, member);
            }
        }
        return null;
    }

    private static @Nullable TreePath typeIn(TreePath within, String name) {
        List<? extends Tree> members = within.getLeaf() instanceof CompilationUnitTree file
                ? file.getTypeDecls()
                : ((ClassTree) within.getLeaf()).getMembers();
        for (Tree member : members) {
            if (member instanceof ClassTree type && type.getSimpleName().contentEquals(name)) {
                return new TreePath(within, member);
            }
        }
        return null;
    }

    private static boolean isSame(Element element, Tree member) {
        if (element instanceof ExecutableElement method) {
            return member instanceof MethodTree tree && isSame(method, tree);
        }
        return member instanceof VariableTree field && field.getName().contentEquals(element.getSimpleName());
    }

    private static boolean isSame(ExecutableElement method, MethodTree tree) {
        if (!tree.getName().contentEquals(method.getSimpleName())) {
            return false;
        }
        List<? extends VariableTree> written = tree.getParameters();
        List<? extends VariableElement> known = method.getParameters();
        boolean compact = written.isEmpty() && method.getSimpleName().contentEquals("<init>");
        if (written.size() != known.size()) {
            return compact
                    && !known.isEmpty()
                    && method.getEnclosingElement() instanceof TypeElement owner
                    && owner.getRecordComponents().size() == known.size();
        }
        for (int i = 0; i < written.size(); i++) {
            String type = Signatures.bare(written.get(i).getType().toString());
            String other = Signatures.bare(known.get(i).asType().toString());
            if (!type.equals(other)) {
                return false;
            }
        }
        return true;
    }

    /** Returns the top-level type that holds the element, or the element itself if it is one; null for a package. */
    static @Nullable TypeElement outermost(Element element) {
        TypeElement top = null;
        for (Element e = element; e != null; e = e.getEnclosingElement()) {
            if (e instanceof TypeElement type) {
                top = type;
            }
        }
        return top;
    }

    /** A source file in memory. */
    static final class SourceText extends javax.tools.SimpleJavaFileObject {
        private final String source;

        SourceText(String source) {
            super(java.net.URI.create("text:///Text.java"), JavaFileObject.Kind.SOURCE);
            this.source = source;
        }

        @Override
        public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return source;
        }

        @Override
        public boolean isNameCompatible(String simpleName, JavaFileObject.Kind kind) {
            return true; // The file has no name to be checked.
        }
    }
}
