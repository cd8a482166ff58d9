package parchment.kernel.help;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ErroneousTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.ImportTree;
import com.sun.source.tree.MemberReferenceTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.lang.model.element.Element;
import javax.lang.model.element.ElementKind;
import javax.lang.model.element.ExecutableElement;
import javax.lang.model.element.Modifier;
import javax.lang.model.element.TypeElement;
import javax.lang.model.type.DeclaredType;
import javax.lang.model.type.TypeKind;
import javax.lang.model.type.TypeMirror;
import javax.lang.model.util.Elements;
import javax.lang.model.util.Types;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/**
 * What a name in a cell means, found by the compiler: it knows the imports, the variables of the session and the types of
 * expressions. Nothing is run, and a cell with errors is read as far as it goes.
 */
final class NameAtCursor {
    private final String name;
    private final Elements elements;
    private final Types types;
    private final DocTrees trees;
    private final CompilationUnitTree unit;
    private final @Nullable TreePath path;

    private NameAtCursor(String name, JavacTask task, CompilationUnitTree unit, @Nullable TreePath path) {
        this.name = name;
        this.elements = task.getElements();
        this.types = task.getTypes();
        this.trees = DocTrees.instance(task);
        this.unit = unit;
        this.path = path;
    }

    /**
     * Reads the cell.
     *
     * @param classPath where the types of the cell are
     */
    static NameAtCursor read(CellUnit cell, String name, String classPath) {
        List<String> options = List.of(
                "-proc:none",
                "-Xlint:none",
                "-XDshould-stop.at=FLOW",
                "-XDshould-stop.ifError=FLOW",
                "-classpath",
                classPath);
        JavacTask task = (JavacTask) ToolProvider.getSystemJavaCompiler()
                .getTask(null, null, ignored -> {}, options, null, List.of(new DocSource.SourceText(cell.source())));
        try {
            CompilationUnitTree unit = task.parse().iterator().next();
            task.analyze();
            SourcePositions positions = DocTrees.instance(task).getSourcePositions();
            Finder finder = new Finder(name, cell.begin(), unit, positions);
            finder.scan(unit, null);
            return new NameAtCursor(name, task, unit, finder.found);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Elements elements() {
        return elements;
    }

    Types types() {
        return types;
    }

    DocTrees trees() {
        return trees;
    }

    /** Returns what the name can mean, the likeliest first; several only where methods share the name. */
    List<Element> meanings() {
        if (path == null) {
            return List.of();
        }
        Element element = trees.getElement(path);
        TreePath parent = path.getParentPath();
        if (parent != null && parent.getLeaf() instanceof NewClassTree made && made.getIdentifier() == path.getLeaf()) {
            Element constructor = trees.getElement(parent);
            element = isKnown(constructor) ? constructor : element;
        }
        if (isKnown(element) && !(element instanceof ExecutableElement)) {
            return List.of(element);
        }
        List<Element> all = new ArrayList<>();
        if (isKnown(element)) {
            all.add(element);
            sharing(element.getEnclosingElement(), element.getSimpleName().toString()).stream()
                    .filter(ExecutableElement.class::isInstance)
                    .sorted(Comparator.comparingInt(this::misfit))
                    .filter(other -> !all.contains(other))
                    .forEach(all::add);
            return all;
        }
        for (TypeElement owner : owners(path)) {
            sharing(owner, name).stream()
                    .sorted(Comparator.comparingInt(this::misfit))
                    .filter(other -> !all.contains(other))
                    .forEach(all::add);
        }
        return all;
    }

    private static boolean isKnown(@Nullable Element element) {
        return element != null
                && element.getKind() != ElementKind.OTHER
                && element.asType().getKind() != TypeKind.ERROR
                && element.getKind() != ElementKind.PACKAGE;
    }

    /** Returns the types among whose members the name is to be looked for when the compiler could not settle on one. */
    private List<TypeElement> owners(TreePath path) {
        List<TypeElement> owners = new ArrayList<>();
        Tree leaf = path.getLeaf();
        if (leaf instanceof MemberSelectTree select) {
            addOwner(owners, path, select.getExpression());
        } else if (leaf instanceof MemberReferenceTree reference) {
            addOwner(owners, path, reference.getQualifierExpression());
        } else {
            TypeElement session = elements.getTypeElement(CellUnit.TYPE);
            if (session != null) {
                owners.add(session);
            }
            for (ImportTree imported : unit.getImports()) {
                if (imported.isStatic() && imported.getQualifiedIdentifier() instanceof MemberSelectTree select) {
                    TypeElement owner =
                            elements.getTypeElement(select.getExpression().toString());
                    if (owner != null) {
                        owners.add(owner);
                    }
                }
            }
        }
        return owners;
    }

    private void addOwner(List<TypeElement> owners, TreePath path, ExpressionTree expression) {
        TypeMirror type = trees.getTypeMirror(new TreePath(path, expression));
        if (type != null && types.asElement(type) instanceof TypeElement owner && type instanceof DeclaredType) {
            owners.add(owner);
        }
    }

    private List<Element> sharing(@Nullable Element owner, String shared) {
        if (!(owner instanceof TypeElement type)) {
            return List.of();
        }
        List<Element> found = new ArrayList<>();
        for (Element member : elements.getAllMembers(type)) {
            if (member.getSimpleName().contentEquals(shared)
                    && !member.getModifiers().contains(Modifier.PRIVATE)
                    && (member.getModifiers().contains(Modifier.PUBLIC)
                            || type.getSimpleName().contentEquals(CellUnit.TYPE))) {
                found.add(member);
            }
        }
        return found;
    }

    /** Counts how badly the arguments written so far fit the method. */
    private int misfit(Element member) {
        if (!(member instanceof ExecutableElement method) || path == null) {
            return 0;
        }
        Tree call = path.getParentPath().getLeaf();
        List<? extends ExpressionTree> arguments = call instanceof MethodInvocationTree invocation
                ? invocation.getArguments()
                : call instanceof NewClassTree made ? made.getArguments() : List.of();
        int known = method.getParameters().size();
        int misfit = arguments.size() > known && !method.isVarArgs() ? 100 : 0;
        for (int i = 0; i < Math.min(arguments.size(), known); i++) {
            TypeMirror given = trees.getTypeMirror(new TreePath(path.getParentPath(), arguments.get(i)));
            TypeMirror wanted = types.erasure(method.getParameters().get(i).asType());
            if (given != null && given.getKind() != TypeKind.ERROR && !(arguments.get(i) instanceof ErroneousTree)) {
                misfit += fits(given, wanted) ? 0 : 10;
            }
        }
        return misfit + Math.abs(known - arguments.size());
    }

    private boolean fits(TypeMirror given, TypeMirror wanted) {
        try {
            return types.isAssignable(types.erasure(given), wanted);
        } catch (IllegalArgumentException e) {
            return false; // Not a type that values have: a package, say.
        }
    }

    /** Finds the tree whose name stands at a place. */
    private static final class Finder extends TreePathScanner<Void, Void> {
        private final String name;
        private final long begin;
        private final CompilationUnitTree unit;
        private final SourcePositions positions;
        private @Nullable TreePath found;

        Finder(String name, int begin, CompilationUnitTree unit, SourcePositions positions) {
            this.name = name;
            this.begin = begin;
            this.unit = unit;
            this.positions = positions;
        }

        @Override
        public @Nullable Void visitIdentifier(IdentifierTree tree, Void nothing) {
            if (tree.getName().contentEquals(name) && positions.getStartPosition(unit, tree) == begin) {
                found = getCurrentPath();
            }
            return super.visitIdentifier(tree, nothing);
        }

        @Override
        public @Nullable Void visitMemberSelect(MemberSelectTree tree, Void nothing) {
            if (tree.getIdentifier().contentEquals(name) && endsAtName(tree)) {
                found = getCurrentPath();
            }
            return super.visitMemberSelect(tree, nothing);
        }

        @Override
        public @Nullable Void visitMemberReference(MemberReferenceTree tree, Void nothing) {
            if (tree.getName().contentEquals(name) && endsAtName(tree)) {
                found = getCurrentPath();
            }
            return super.visitMemberReference(tree, nothing);
        }

        @Override
        public @Nullable Void visitVariable(VariableTree tree, Void nothing) {
            if (tree.getName().contentEquals(name) && isAround(tree)) {
                found = getCurrentPath();
            }
            return super.visitVariable(tree, nothing);
        }

        @Override
        public @Nullable Void visitMethod(MethodTree tree, Void nothing) {
            if (tree.getName().contentEquals(name) && isAround(tree)) {
                found = getCurrentPath();
            }
            return super.visitMethod(tree, nothing);
        }

        @Override
        public @Nullable Void visitClass(ClassTree tree, Void nothing) {
            if (tree.getSimpleName().contentEquals(name) && isAround(tree)) {
                found = getCurrentPath();
            }
            return super.visitClass(tree, nothing);
        }

        @Override
        public @Nullable Void visitErroneous(ErroneousTree tree, Void nothing) {
            return scan(tree.getErrorTrees(), nothing);
        }

        private boolean endsAtName(Tree tree) {
            return positions.getEndPosition(unit, tree) == begin + name.length();
        }

        /** What is found later is inside, and goes before. */
        private boolean isAround(Tree tree) {
            return positions.getStartPosition(unit, tree) <= begin && begin < positions.getEndPosition(unit, tree);
        }
    }
}
