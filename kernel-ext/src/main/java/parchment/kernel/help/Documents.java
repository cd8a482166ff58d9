package parchment.kernel.help;

import com.sun.source.doctree.BlockTagTree;
import com.sun.source.doctree.DocCommentTree;
import com.sun.source.doctree.DocTree;
import com.sun.source.doctree.ParamTree;
import com.sun.source.doctree.ReturnTree;
import com.sun.source.doctree.SeeTree;
import com.sun.source.doctree.ThrowsTree;
import com.sun.source.util.TreePath;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.lang.model.element.Element;
import javax.lang.model.element.ElementKind;
import javax.lang.model.element.ExecutableElement;
import javax.lang.model.element.Modifier;
import javax.lang.model.element.TypeElement;
import javax.lang.model.type.TypeMirror;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;
import parchment.kernel.help.DocPage.Block;
import parchment.kernel.help.DocPage.Span;
import parchment.kernel.help.DocPage.Term;

/** Writes the page about a name from the sources' comments. */
final class Documents {
    private static final int MOST_OVERLOADS = 12;
    private static final int LONGEST_VALUE = 300;

    private final NameAtCursor cell;
    private final Function<String, @Nullable Object> values;
    private final Map<String, Optional<DocSource>> sources = new HashMap<>();

    /**
     * @param cell what the compiler read
     * @param values gives the present value of a variable of the session, or null
     */
    Documents(NameAtCursor cell, Function<String, @Nullable Object> values) {
        this.cell = cell;
        this.values = values;
    }

    /** Tells whether Java itself declares the element. */
    static boolean isJavas(Element element) {
        TypeElement top = DocSource.outermost(element);
        return top != null && top.getQualifiedName().toString().startsWith("java");
    }

    /** Returns the blocks of a bare comment, as Java's own sources have it. */
    static List<Block> ofComment(String javadoc) {
        DocSource source = DocSource.parse("/**\n" + javadoc.replace("*/", "* /") + "\n*/\nclass Commented {}");
        DocCommentTree comment = source.commentOfType("Commented");
        return comment == null
                ? List.of(DocPage.Paragraph.of(javadoc))
                : Stream.concat(body(comment, name -> name).stream(), tags(comment, name -> name).stream())
                        .toList();
    }

    /** Returns the page about what a name can mean. */
    DocPage page(List<Element> meanings) {
        Element first = meanings.get(0);
        List<Block> blocks = new ArrayList<>();
        if (first instanceof TypeElement type) {
            addType(blocks, type);
        } else if (isVariable(first)) {
            addVariable(blocks, first);
        } else {
            addMember(blocks, first);
            if (meanings.size() > 1) {
                blocks.add(new DocPage.Heading("Also"));
                meanings.stream().skip(1).limit(MOST_OVERLOADS).forEach(other -> addMember(blocks, other));
            }
            if (first.getEnclosingElement() instanceof TypeElement owner && !hasCode(blocks, first)) {
                example(first, owner).ifPresent(example -> {
                    blocks.add(new DocPage.Heading("Example"));
                    blocks.add(example);
                });
            }
        }
        return new DocPage(blocks);
    }

    private void addMember(List<Block> blocks, Element member) {
        blocks.add(new DocPage.Signature(signature(member)));
        FeatureFacts.of(member).ifPresent(blocks::addAll);
        addComment(blocks, member);
        if (member.getKind() == ElementKind.ENUM_CONSTANT
                && member.getEnclosingElement() instanceof TypeElement owner) {
            addFirstSentence(blocks, owner);
            blocks.add(new DocPage.Heading("One of"));
            blocks.add(new DocPage.Terms(constants(owner)));
        }
    }

    private void addType(List<Block> blocks, TypeElement type) {
        blocks.add(new DocPage.Signature(signature(type)));
        addComment(blocks, type);
        if (type.getKind() == ElementKind.ENUM) {
            blocks.add(new DocPage.Heading("Values"));
            blocks.add(new DocPage.Terms(constants(type)));
        }
        List<Term> made = new ArrayList<>();
        for (Element member : type.getEnclosedElements()) {
            boolean makes = member.getModifiers().contains(Modifier.PUBLIC)
                    && (member instanceof ExecutableElement method
                                    && method.getModifiers().contains(Modifier.STATIC)
                                    && type.getKind() != ElementKind.ENUM
                            || member.getKind() == ElementKind.CONSTRUCTOR && type.getKind() != ElementKind.RECORD);
            if (makes && made.size() < MOST_OVERLOADS) {
                made.add(new Term(signature(member), firstSentence(member)));
            }
        }
        if (!made.isEmpty()) {
            blocks.add(new DocPage.Heading("Begin with"));
            blocks.add(new DocPage.Terms(made));
        }
    }

    private void addVariable(List<Block> blocks, Element variable) {
        blocks.add(new DocPage.Signature(signature(variable)));
        Object value = variable.getKind() == ElementKind.FIELD
                ? values.apply(variable.getSimpleName().toString())
                : null;
        sentence(value).ifPresent(words -> blocks.add(DocPage.Paragraph.of(words)));
        FeatureFacts.of(value).ifPresent(blocks::addAll);
        addComment(blocks, variable);
        if (cell.types().asElement(variable.asType()) instanceof TypeElement type && !isJavas(type)) {
            addType(blocks, type);
        }
    }

    private void addComment(List<Block> blocks, Element element) {
        DocSource source = source(element);
        DocCommentTree comment = comment(element);
        if (comment == null) {
            if (isAccessor(element) && element.getEnclosingElement() instanceof TypeElement owner) {
                List<Span> meaning =
                        componentMeaning(owner, element.getSimpleName().toString());
                if (!meaning.isEmpty()) {
                    blocks.add(new DocPage.Paragraph(meaning));
                }
            }
            return;
        }
        Function<String, String> constants = source == null ? name -> name : source::constant;
        blocks.addAll(body(comment, constants));
        blocks.addAll(tags(comment, constants));
    }

    private void addFirstSentence(List<Block> blocks, TypeElement type) {
        List<Span> sentence = firstSentence(type);
        if (!sentence.isEmpty()) {
            List<Span> words =
                    new ArrayList<>(List.of(Span.code(type.getSimpleName().toString()), Span.words(": ")));
            words.addAll(sentence);
            blocks.add(new DocPage.Paragraph(words));
        }
    }

    private List<Term> constants(TypeElement type) {
        return type.getEnclosedElements().stream()
                .filter(member -> member.getKind() == ElementKind.ENUM_CONSTANT)
                .map(member -> new Term(member.getSimpleName().toString(), firstSentence(member)))
                .toList();
    }

    private List<Span> firstSentence(Element element) {
        DocCommentTree comment = comment(element);
        return comment == null ? List.of() : DocWords.spans(comment.getFirstSentence(), name -> name);
    }

    private List<Span> componentMeaning(TypeElement owner, String component) {
        DocCommentTree comment = comment(owner);
        return comment == null
                ? List.of()
                : comment.getBlockTags().stream()
                        .filter(tag -> tag instanceof ParamTree param
                                && param.getName().getName().contentEquals(component))
                        .findFirst()
                        .map(tag -> DocWords.spans(((ParamTree) tag).getDescription(), name -> name))
                        .orElse(List.of());
    }

    /** Returns the example of the type's own comment; of a feature, one with the feature in it. */
    private Optional<Block> example(Element member, TypeElement owner) {
        Optional<Block> own = FeatureFacts.example(member);
        DocCommentTree comment = own.isPresent() ? null : comment(owner);
        return comment == null
                ? own
                : DocWords.blocks(comment.getFullBody(), name -> name).stream()
                        .filter(DocPage.Code.class::isInstance)
                        .findFirst();
    }

    private boolean hasCode(List<Block> blocks, Element element) {
        DocCommentTree comment = comment(element);
        return comment != null
                && DocWords.blocks(comment.getFullBody(), name -> name).stream()
                        .anyMatch(DocPage.Code.class::isInstance)
                && !blocks.isEmpty();
    }

    private String signature(Element element) {
        List<String> names = List.of();
        if (element instanceof ExecutableElement method) {
            DocSource source = source(element);
            List<String> written = source == null ? null : source.parameters(method);
            names = written == null ? recordNames(method) : written;
        }
        return Signatures.of(element, names);
    }

    private static List<String> recordNames(ExecutableElement method) {
        return method.getKind() == ElementKind.CONSTRUCTOR
                        && method.getEnclosingElement() instanceof TypeElement owner
                        && owner.getRecordComponents().size()
                                == method.getParameters().size()
                ? owner.getRecordComponents().stream()
                        .map(c -> c.getSimpleName().toString())
                        .toList()
                : List.of();
    }

    /** Returns the comment on the element, or on what it overrides; null if there is none. */
    private @Nullable DocCommentTree comment(Element element) {
        TreePath inCell = cell.trees().getPath(element);
        DocSource source = source(element);
        DocCommentTree own = inCell != null
                ? cell.trees().getDocCommentTree(inCell)
                : source == null ? null : source.comment(element);
        if (own != null
                || !(element instanceof ExecutableElement method)
                || !(element.getEnclosingElement() instanceof TypeElement owner)) {
            return own;
        }
        return inherited(method, owner, owner);
    }

    private @Nullable DocCommentTree inherited(ExecutableElement method, TypeElement owner, TypeElement from) {
        for (TypeMirror above : cell.types().directSupertypes(from.asType())) {
            if (!(cell.types().asElement(above) instanceof TypeElement type) || isJavas(type)) {
                continue;
            }
            for (Element member : type.getEnclosedElements()) {
                if (member instanceof ExecutableElement other && cell.elements().overrides(method, other, owner)) {
                    DocSource source = source(other);
                    DocCommentTree comment = source == null ? null : source.comment(other);
                    if (comment != null) {
                        return comment;
                    }
                }
            }
            DocCommentTree further = inherited(method, owner, type);
            if (further != null) {
                return further;
            }
        }
        return null;
    }

    private @Nullable DocSource source(Element element) {
        TypeElement top = DocSource.outermost(element);
        return top == null
                ? null
                : sources.computeIfAbsent(top.getQualifiedName().toString(), name -> DocSource.of(top))
                        .orElse(null);
    }

    private static List<Block> body(DocCommentTree comment, Function<String, String> constants) {
        return DocWords.blocks(comment.getFullBody(), constants);
    }

    private static List<Block> tags(DocCommentTree comment, Function<String, String> constants) {
        List<Term> parameters = new ArrayList<>();
        List<Term> failures = new ArrayList<>();
        List<Block> blocks = new ArrayList<>();
        List<Block> after = new ArrayList<>();
        for (DocTree tag : comment.getBlockTags()) {
            if (tag instanceof ParamTree param) {
                String name = param.getName().getName().toString();
                parameters.add(new Term(
                        param.isTypeParameter() ? "<" + name + ">" : name,
                        DocWords.spans(param.getDescription(), constants)));
            } else if (tag instanceof ThrowsTree failure) {
                failures.add(new Term(
                        failure.getExceptionName().getSignature(),
                        DocWords.spans(failure.getDescription(), constants)));
            } else if (tag instanceof ReturnTree returned) {
                after.add(0, labelled("Returns ", DocWords.spans(returned.getDescription(), constants)));
            } else if (tag instanceof SeeTree see) {
                after.add(labelled("See ", DocWords.spans(see.getReference(), constants)));
            } else if (tag instanceof BlockTagTree other && other.getTagName().equals("deprecated")) {
                after.add(DocPage.Paragraph.of(other.toString()));
            }
        }
        if (!parameters.isEmpty()) {
            blocks.add(new DocPage.Heading("Parameters"));
            blocks.add(new DocPage.Terms(parameters));
        }
        after.stream().limit(1).filter(Documents::isReturn).forEach(blocks::add);
        if (!failures.isEmpty()) {
            blocks.add(new DocPage.Heading("Fails with"));
            blocks.add(new DocPage.Terms(failures));
        }
        after.stream().filter(block -> !blocks.contains(block)).forEach(blocks::add);
        return blocks;
    }

    private static boolean isReturn(Block block) {
        return block instanceof DocPage.Paragraph paragraph
                && paragraph.spans().get(0).text().startsWith("Returns ");
    }

    private static DocPage.Paragraph labelled(String label, List<Span> words) {
        List<Span> all = new ArrayList<>(List.of(Span.words(label)));
        all.addAll(words);
        return new DocPage.Paragraph(all);
    }

    private static boolean isVariable(Element element) {
        return switch (element.getKind()) {
            case LOCAL_VARIABLE, PARAMETER, EXCEPTION_PARAMETER, RESOURCE_VARIABLE, BINDING_VARIABLE -> true;
            case FIELD ->
                element.getEnclosingElement() instanceof TypeElement owner
                        && owner.getSimpleName().contentEquals(CellUnit.TYPE);
            default -> false;
        };
    }

    private static boolean isAccessor(Element element) {
        return element instanceof ExecutableElement method
                && method.getParameters().isEmpty()
                && method.getEnclosingElement() instanceof TypeElement owner
                && owner.getRecordComponents().stream()
                        .anyMatch(c -> c.getSimpleName().contentEquals(method.getSimpleName()));
    }

    /** Only values whose text is known to be short work are asked for it. */
    private static Optional<String> sentence(@Nullable Object value) {
        String words;
        if (value instanceof Collection<?> collection) {
            words = "holds " + collection.size();
        } else if (value instanceof Map<?, ?> map) {
            words = "holds " + map.size();
        } else if (value instanceof String || value instanceof Number || value instanceof Boolean) {
            words = value.toString();
        } else if (value instanceof Showable && value.getClass().getClassLoader() == Showable.class.getClassLoader()) {
            words = value.toString();
        } else {
            return Optional.empty();
        }
        return Optional.of(words.length() <= LONGEST_VALUE ? words : words.substring(0, LONGEST_VALUE) + " ...");
    }
}
