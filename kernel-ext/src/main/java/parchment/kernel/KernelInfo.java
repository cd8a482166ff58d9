package parchment.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import org.dflib.jjava.jupyter.messages.Header;

/** What the kernel says of itself. */
final class KernelInfo {
    private KernelInfo() {}

    static JsonObject json() {
        JsonObject language = new JsonObject();
        language.addProperty("name", "java");
        language.addProperty("version", Runtime.version().toString());
        language.addProperty("mimetype", "text/x-java");
        language.addProperty("file_extension", ".java");
        language.addProperty("pygments_lexer", "java");
        language.addProperty("codemirror_mode", "text/x-java");
        JsonObject info = new JsonObject();
        info.addProperty("status", "ok");
        info.addProperty("protocol_version", Header.PROTOCOL_VERISON);
        info.addProperty("implementation", "parchment");
        info.addProperty("implementation_version", version());
        info.add("language_info", language);
        info.addProperty(
                "banner",
                "Parchment " + version() + " on Java " + Runtime.version().feature()
                        + ". Begin with: var logbook = Logbook.open()");
        info.add("help_links", new JsonArray());
        return info;
    }

    private static String version() {
        String version = KernelInfo.class.getPackage().getImplementationVersion();
        return version == null ? "0" : version;
    }
}
