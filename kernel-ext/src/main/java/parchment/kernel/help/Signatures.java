package parchment.kernel.help;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.lang.model.element.Element;
import javax.lang.model.element.ElementKind;
import javax.lang.model.element.ExecutableElement;
import javax.lang.model.element.Modifier;
import javax.lang.model.element.TypeElement;
import javax.lang.model.element.VariableElement;
import javax.lang.model.type.TypeMirror;

/** Writes declarations in plain form: without packages, annotations, or words that do not matter to who uses them. */
final class Signatures {
    private Signatures() {}

    /** Returns the declaration in one line; parameters are named as the source names them. */
    static String of(Element element, List<String> parameters) {
        if (element instanceof ExecutableElement method) {
            return method(method, parameters);
        }
        if (element instanceof TypeElement type) {
            return type(type);
        }
        if (element.getKind() == ElementKind.ENUM_CONSTANT) {
            return owner(element) + "." + element.getSimpleName();
        }
        String type = plain(element.asType());
        return element.getKind() == ElementKind.FIELD && !owner(element).equals(CellUnit.TYPE)
                ? type + " " + owner(element) + "." + element.getSimpleName()
                : type + " " + element.getSimpleName();
    }

    private static String method(ExecutableElement method, List<String> names) {
        List<String> written = new ArrayList<>();
        for (int i = 0; i < method.getParameters().size(); i++) {
            VariableElement parameter = method.getParameters().get(i);
            String type = plain(parameter.asType());
            if (method.isVarArgs() && i == method.getParameters().size() - 1) {
                type = type.replaceFirst("\\[\\]$", "...");
            }
            String name =
                    i < names.size() ? names.get(i) : parameter.getSimpleName().toString();
            written.add(type + " " + name);
        }
        String list = "(" + String.join(", ", written) + ")";
        if (method.getKind() == ElementKind.CONSTRUCTOR) {
            return "new " + owner(method) + list;
        }
        String owner = owner(method).equals(CellUnit.TYPE) ? "" : owner(method) + ".";
        return plain(method.getReturnType()) + " " + owner + method.getSimpleName() + list;
    }

    private static String type(TypeElement type) {
        String name = plain(type.asType());
        return switch (type.getKind()) {
            case RECORD ->
                "record " + name
                        + type.getRecordComponents().stream()
                                .map(c -> plain(c.asType()) + " " + c.getSimpleName())
                                .collect(Collectors.joining(", ", "(", ")"));
            case ENUM -> "enum " + name;
            case INTERFACE -> "interface " + name;
            case ANNOTATION_TYPE -> "@interface " + name;
            default -> (type.getModifiers().contains(Modifier.ABSTRACT) ? "abstract class " : "class ") + name;
        };
    }

    private static String owner(Element element) {
        Element owner = element.getEnclosingElement();
        return owner == null ? "" : owner.getSimpleName().toString();
    }

    /** Returns the type's name as a cell would write it. */
    static String plain(TypeMirror type) {
        return type.toString()
                .replaceAll("@[\\w.]+(\\([^)]*\\))?\\s*,?", "")
                .replaceAll("\\b(?:[a-z_][\\w]*\\.)+(?=[A-Z@])", "")
                .replace(CellUnit.TYPE + ".", "")
                .replaceAll(",(?! )", ", ")
                .strip();
    }

    /** Returns the last name of the type alone, with brackets if it is an array: enough to tell overloads of ours apart. */
    static String bare(String type) {
        String name = type.replaceAll("@[\\w.]+\\s*,?", "").replace("...", "[]");
        while (name.contains("<")) {
            String less = name.replaceAll("<[^<>]*>", "");
            if (less.equals(name)) {
                break;
            }
            name = less;
        }
        return name.replaceAll("[\\w$]+\\.", "").replaceAll("\\s", "");
    }
}
