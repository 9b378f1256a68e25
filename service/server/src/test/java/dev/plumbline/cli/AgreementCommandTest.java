// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The published worked examples, whose data and sources stand in the core's external check values. */
class AgreementCommandTest {
    private static final Path EXTERNAL = Path.of("..", "core", "src", "test", "resources", "external");

    @TempDir
    static Path folder;

    private static Path write(String name, String text) throws Exception {
        return Files.writeString(folder.resolve(name), text);
    }

    private static Path peakFlow() throws Exception {
        List<String> rows = Files.readAllLines(EXTERNAL.resolve("bland_altman_pefr_1986.csv"));
        return write(
                "pefr.csv",
                rows.stream()
                        .filter(row -> !row.startsWith("#"))
                        .map(row -> row.split(",", -1)[0] + ";" + row.split(",", -1)[2])
                        .collect(Collectors.joining("\n")));
    }

    /** Bland and Altman 1986: first readings of the two meters, mean -2.1, SD 38.8, limits -79.7 and 75.5. */
    @Test
    void peakFlowAsPublished() throws Exception {
        JsonNode pair = Invoked.plumbline("agreement", peakFlow(), "--json", "--multiple", "2")
                .json()
                .path("limitsOfAgreement")
                .get(0);
        assertThat(pair.path("first").textValue()).isEqualTo("wright1");
        assertThat(pair.path("bias").doubleValue()).isCloseTo(-2.1, within(0.05));
        assertThat(pair.path("sd").doubleValue()).isCloseTo(38.8, within(0.05));
        assertThat(pair.path("lowerLimit").doubleValue()).isCloseTo(-79.7, within(0.1));
        assertThat(pair.path("upperLimit").doubleValue()).isCloseTo(75.5, within(0.1));
        assertThat(pair.path("biasInterval").path("low").doubleValue()).isCloseTo(-22.0, within(0.1));
        assertThat(pair.path("biasInterval").path("high").doubleValue()).isCloseTo(17.8, within(0.1));
        assertThat(pair.path("lowerLimitInterval").path("low").doubleValue()).isCloseTo(-114.3, within(0.2));
        assertThat(pair.path("upperLimitInterval").path("high").doubleValue()).isCloseTo(110.1, within(0.3));
    }

    /** Shrout and Fleiss 1979, table 4: .17 .29 .71 .44 .62 .91. */
    @Test
    void judgesAsPublished() throws Exception {
        JsonNode answer = Invoked.plumbline("agreement", EXTERNAL.resolve("shrout_fleiss_1979.csv"), "--json")
                .json();
        double[] published = {0.17, 0.29, 0.71, 0.44, 0.62, 0.91};
        assertThat(answer.path("intraclassCorrelations")).hasSize(6);
        for (int i = 0; i < published.length; i++) {
            assertThat(answer.path("intraclassCorrelations")
                            .get(i)
                            .path("value")
                            .doubleValue())
                    .isCloseTo(published[i], within(0.005));
        }
        assertThat(answer.path("limitsOfAgreement"))
                .as("four observers, two by two")
                .hasSize(6);
        assertThat(answer.path("technicalError").path("value").doubleValue()).isPositive();
    }

    @Test
    void wordsNameFormAndLimits() throws Exception {
        Invoked words = Invoked.plumbline("agreement", peakFlow());
        assertThat(words.code()).as(words.err()).isZero();
        assertThat(words.out())
                .contains(
                        "17 subjects, 2 observers", "wright1 - mini1", "ICC(2,1)", "95 % interval", "Technical error");
        assertThat(words.out().lines()).allMatch(line -> line.length() <= 120);
    }

    @Test
    void subjectsMayHaveNames() throws Exception {
        Path table = write("named.csv", "\ufeffframe,A,B\r\nf1,1,2\r\nf2,3,3\r\nf3,5,4\r\n");
        JsonNode answer = Invoked.plumbline("agreement", table, "--json").json();
        assertThat(answer.path("subjects").intValue()).isEqualTo(3);
        assertThat(answer.path("observers").get(0).textValue()).isEqualTo("A");
    }

    @Test
    void valuesThatAreAllEqualHaveNoCorrelation() throws Exception {
        JsonNode answer = Invoked.plumbline("agreement", write("same.csv", "4,4\n4,4\n4,4\n"), "--json")
                .json();
        assertThat(answer.path("intraclassCorrelations").get(0).path("value").isNull())
                .isTrue();
        assertThat(Invoked.plumbline("agreement", write("same.csv", "4,4\n4,4\n4,4\n"))
                        .out())
                .contains("no value");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "A,B;1,2;3|Line 3 has 1 columns",
                "A,B;1,2;3,x|Line 3, column 2 is no number",
                "A,B;1,2;3,|Line 3, column 2 is empty",
                "A,B;1,NaN;3,4|Line 2, column 2",
                "A,B;1,2|1 subjects are too few",
                "A;1;2|One observer",
                "A,B|too few",
                "# nothing|holds no table",
            })
    void refusesWhatIsNoTableAndSaysWhere(String table, String words) throws Exception {
        Invoked refused = Invoked.plumbline("agreement", write("bad.csv", table.replace(';', '\n')));
        assertThat(refused.code()).as(refused.out()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(refused.out()).isEmpty();
        assertThat(refused.err()).contains(words);
    }
}
