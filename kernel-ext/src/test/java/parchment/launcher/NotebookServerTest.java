package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NotebookServerTest {
    @ParameterizedTest
    @CsvSource({
        "notebook, 6.4.12, CLASSIC",
        "notebook, 6.99, CLASSIC",
        "notebook, 7.0.0, NOTEBOOK",
        "notebook, '7.6.3\n', NOTEBOOK",
        "notebook, 10.1, NOTEBOOK",
        "notebook, no number, NOTEBOOK",
        "notebook, '', NOTEBOOK",
        "lab, 4.6.4, LAB",
        "lab, 3.0, LAB"
    })
    void isToldByItsNameAndVersion(String name, String version, NotebookServer server) {
        assertEquals(server, NotebookServer.of(name, version));
    }

    /** Names of the options as the servers list them with --help-all (notebook 6.4.12 and 7.6.3, JupyterLab 4.6.4). */
    @Test
    void eachHasItsOwnOptionAndAddresses() {
        assertEquals("--NotebookApp.default_url=/a", NotebookServer.CLASSIC.firstShown("/a"));
        assertEquals("--JupyterNotebookApp.default_url=/a", NotebookServer.NOTEBOOK.firstShown("/a"));
        assertEquals("--LabApp.default_url=/a", NotebookServer.LAB.firstShown("/a"));
        assertEquals("notebooks/tour.ipynb", NotebookServer.CLASSIC.address("tour.ipynb"));
        assertEquals("notebooks/tour.ipynb", NotebookServer.NOTEBOOK.address("tour.ipynb"));
        assertEquals("lab/tree/tour.ipynb", NotebookServer.LAB.address("tour.ipynb"));
        assertEquals("tree", NotebookServer.NOTEBOOK.list());
        assertEquals("lab", NotebookServer.LAB.list());
    }
}
