// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.review.RatingTable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A table of measurements: one column per observer, one row per subject, separated by comma, semicolon or tab, numbers with
 * a decimal point. A first row that holds no numbers names the observers, and a first column that holds none names the
 * subjects. Empty lines and lines that begin with # count for nothing.
 */
record RatingFile(List<String> observers, RatingTable table) {
    private static final int MOST_BYTES = 1 << 24;

    RatingFile {
        observers = List.copyOf(observers);
    }

    private record Row(int line, List<String> cells) {}

    /** @throws Refusal with line and column */
    static RatingFile read(Path path) {
        List<Row> rows = rows(text(path));
        if (rows.isEmpty()) {
            throw refused(
                    "The file " + path + " holds no table.", "Give one row per subject, one column per observer.");
        }
        boolean named = rows.get(0).cells().stream().noneMatch(RatingFile::isNumber);
        List<Row> body = named ? rows.subList(1, rows.size()) : rows;
        boolean subjectsNamed = !body.isEmpty()
                && body.stream().noneMatch(row -> isNumber(row.cells().get(0)));
        int skipped = subjectsNamed ? 1 : 0;
        int width = rows.get(0).cells().size();
        List<List<Double>> values = new ArrayList<>();
        for (Row row : body) {
            values.add(numbers(row, skipped, width));
        }
        List<String> observers = named
                ? rows.get(0).cells().subList(Math.min(skipped, width), width)
                : IntStream.rangeClosed(1, width - skipped)
                        .mapToObj(i -> "observer " + i)
                        .toList();
        return new RatingFile(observers, RatingTable.of(values));
    }

    private static String text(Path path) {
        try (InputStream in = Files.newInputStream(path)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw new Refusal(new Problem.TooLarge("", MOST_BYTES));
            }
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\ufeff") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw refused("The file " + path + " is not text in UTF-8.", "Save the table as CSV in UTF-8.");
        } catch (FileSystemException e) {
            throw CaseFiles.unreadable("", path);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<Row> rows(String text) {
        List<Row> rows = new ArrayList<>();
        String[] lines = text.split("\r\n|\n|\r", -1);
        for (int i = 0; i < lines.length; i++) {
            if (!lines[i].isBlank() && !lines[i].startsWith("#")) {
                String separator = lines[i].contains("\t") ? "\t" : lines[i].contains(";") ? ";" : ",";
                rows.add(new Row(
                        i + 1,
                        Arrays.stream(lines[i].split(separator, -1))
                                .map(RatingFile::unquoted)
                                .toList()));
            }
        }
        return rows;
    }

    private static String unquoted(String cell) {
        String bare = cell.strip();
        boolean quoted = bare.length() >= 2 && bare.startsWith("\"") && bare.endsWith("\"");
        return quoted ? bare.substring(1, bare.length() - 1).strip() : bare;
    }

    private static boolean isNumber(String cell) {
        return cell.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");
    }

    private static List<Double> numbers(Row row, int skipped, int width) {
        if (row.cells().size() != width) {
            throw refused(
                    "Line " + row.line() + " has " + row.cells().size() + " columns where the first has " + width + ".",
                    "Leave out subjects that not every observer measured.");
        }
        List<Double> numbers = new ArrayList<>();
        for (int column = skipped; column < width; column++) {
            String cell = row.cells().get(column);
            double value = isNumber(cell) ? Double.parseDouble(cell) : Double.NaN;
            if (!Double.isFinite(value)) {
                throw refused(
                        "Line " + row.line() + ", column " + (column + 1)
                                + (cell.isEmpty() ? " is empty." : " is no number."),
                        "Give a number with a decimal point, or leave out subjects that not every observer measured.");
            }
            numbers.add(value);
        }
        return numbers;
    }

    private static Refusal refused(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("", detail, remedy));
    }

    /** The two columns alone. */
    RatingTable pair(int first, int second) {
        return RatingTable.of(IntStream.range(0, table.subjects())
                .mapToObj(subject -> List.of(table.at(subject, first), table.at(subject, second)))
                .toList());
    }
}
