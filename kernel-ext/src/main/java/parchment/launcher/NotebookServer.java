package parchment.launcher;

import java.util.Optional;

/** Which of Jupyter's three servers of notebooks is run, as far as its addresses and options differ. */
enum NotebookServer {
    /** Notebook up to version 6. */
    CLASSIC("NotebookApp", "notebooks/", "tree"),
    /** Notebook from version 7 on. */
    NOTEBOOK("JupyterNotebookApp", "notebooks/", "tree"),
    LAB("LabApp", "lab/tree/", "lab");

    private static final int FIRST_NEW_VERSION = 7;

    private final String application;
    private final String notebooks;
    private final String list;

    NotebookServer(String application, String notebooks, String list) {
        this.application = application;
        this.notebooks = notebooks;
        this.list = list;
    }

    /**
     * Returns the server of that name and version.
     *
     * @param name the word after {@code jupyter}: notebook or lab
     * @param version as the server says it, such as 7.4.2
     */
    static NotebookServer of(String name, String version) {
        if (name.equals("lab")) {
            return LAB;
        }
        Optional<Integer> number = version.strip().matches("\\d{1,4}\\..*")
                ? Optional.of(Integer.valueOf(version.strip().replaceFirst("\\..*", "")))
                : Optional.empty();
        return number.filter(n -> n < FIRST_NEW_VERSION).isPresent() ? CLASSIC : NOTEBOOK;
    }

    /** Returns the option that makes an address the first that is shown; the address begins with a slash. */
    String firstShown(String address) {
        return "--" + application + ".default_url=" + address;
    }

    /** Returns where a notebook opens, by its place in the folder of notebooks, counted from the server's root. */
    String address(String notebook) {
        return notebooks + notebook;
    }

    /** Returns where the notebooks are listed, counted from the server's root. */
    String list() {
        return list;
    }
}
