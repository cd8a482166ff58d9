package parchment.stats;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import parchment.stats.mixed.AgreementOfMixedModels;
import parchment.stats.mixed.AgreementOfNist;

/** Writes docs/measurements/agreement.md: our numbers beside published and outside ones. Takes the page's path. */
final class AgreementPage {
    private AgreementPage() {}

    record Section(String title, String words, List<AgreementRow> rows) {}

    static List<Section> sections() {
        return List.of(
                new Section(
                        "Linear mixed models",
                        "lme4 1.1-31 and lmerTest 3.1-3 in R 4.2.2 (bobyqa, rhoend 1e-11), `src/library/test/r/mixed-models.R`; the same fits agree with the"
                                + " printed values of Bates, Maechler, Bolker and Walker 2015 (J. Stat. Softw. 67(1)). The panel has 12,000"
                                + " invented scores of 2,000 batches in 300 sessions by 10 tasters, crossed. lme4's optimiser gives about"
                                + " seven digits of a variance, lmerTest's second derivatives fewer. Further cases (other models of these"
                                + " data, Machines, ham, TVbo, carrots, joint tests) are in `LinearMixedModelTest`: criterion at lme4's"
                                + " variances within 1e-9, our optimum at most 1e-6 above theirs.",
                        AgreementOfMixedModels.linear()),
                new Section(
                        "Ordinal mixed models",
                        "ordinal 2022.11-16, clm and clmm by Laplace's approximation (gradTol 1e-9, where clmm reaches its own optimum; errors"
                                + " from its default stop), `src/library/test/r/ordinal.R`; wine data of Randall 1989. Without judges the values are"
                                + " those printed by Christensen (from memory: -86.49, 2.503, 1.528).",
                        AgreementOfMixedModels.ordinal()),
                new Section(
                        "Gaussian process",
                        "scikit-learn 1.2.1. Eight points with everything given: noise variance 0.01, length 0.8, size 1, mean 0. Air quality: ozone by"
                                + " temperature and wind, everything found, `src/library/test/python/gaussian_process.py`.",
                        AgreementOfProcesses.process()),
                new Section(
                        "NIST linear regression",
                        "Certified to 15 digits; https://www.itl.nist.gov/div898/strd/. Wampler1 and 2 are certified with errors of exactly 0.",
                        AgreementOfNist.linear()),
                new Section("NIST analysis of variance", "", AgreementOfNist.variance()),
                new Section(
                        "NIST nonlinear regression",
                        "Certified to 11 digits, from both of NIST's starts.",
                        AgreementOfNist.nonlinear()));
    }

    static String page() {
        StringBuilder page = new StringBuilder("""
                # Agreement with published and outside numbers

                Each line holds one number or several and shows the one that agrees worst. Digits: minus the decimal logarithm of the relative
                difference, 15 at most. `AgreementTest` holds every line to its digits on each build. Written by

                ```
                mvn -q -f src test-compile dependency:build-classpath -Dmdep.outputFile=target/classpath
                java -cp "src/roastery/target/test-classes:src/roastery/target/classes:$(cat src/roastery/target/classpath)" parchment.stats.AgreementPage docs/measurements/agreement.md
                ```

                The outside numbers stand in `src/library/test/resources/reference`, those of R beside the scripts that print them in `src/library/test/r`; where R and
                the packages are installed `ReferenceScriptsTest` runs the scripts again.
                """);
        for (Section section : sections()) {
            page.append("\n## ").append(section.title()).append("\n\n");
            if (!section.words().isEmpty()) {
                page.append(section.words()).append("\n\n");
            }
            page.append(
                    "| what | source | numbers | ours | theirs | digits |\n| --- | --- | --- | --- | --- | --- |\n");
            section.rows().forEach(row -> page.append(row.markdown()).append('\n'));
        }
        return page.toString();
    }

    public static void main(String[] arguments) throws IOException {
        Files.writeString(Path.of(arguments[0]), page(), StandardCharsets.UTF_8);
    }
}
