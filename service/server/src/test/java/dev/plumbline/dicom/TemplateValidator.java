// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.pixelmed.validate.DicomSRValidator;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The SR template validator of the DICOM toolkit, with its own tables or with the corrected ones.
 *
 * <p>Two of its complaints are false. TID 300 rows 9 and 10 match any number under a number and want INFERRED FROM, where
 * the uncertainty of TID 310 row 5 has HAS PROPERTIES. And a number without value is called "Missing value", although an
 * empty Measured Value Sequence with a qualifier is legal (type 2). The corrected tables are made from the installed ones
 * whenever the tests run and are kept nowhere.
 */
final class TemplateValidator {
    private static final String FOLDER = "com/pixelmed/validate/";
    private static final String DESCRIPTIONS = "DicomSRDescriptionsCompiled.xsl";
    private static final String RULES = "CommonDicomSRValidationRules.xsl";

    private final Object validator;
    private final Method validate;

    private TemplateValidator(List<URL> path) {
        // its own loader, so that the tables of this path are the ones it finds
        ClassLoader loader = new URLClassLoader(path.toArray(URL[]::new), ClassLoader.getPlatformClassLoader());
        try {
            Class<?> type = loader.loadClass(DicomSRValidator.class.getName());
            validator = type.getConstructor().newInstance();
            validate = type.getMethod(
                    "validate",
                    String.class,
                    boolean.class,
                    boolean.class,
                    boolean.class,
                    boolean.class,
                    boolean.class);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError("The toolkit's validator is not as expected", e);
        }
    }

    static TemplateValidator untouched() {
        return new TemplateValidator(List.of(toolkit()));
    }

    static TemplateValidator corrected(Path folder) throws IOException {
        Path tables = Files.createDirectories(folder.resolve(FOLDER));
        Files.writeString(tables.resolve(DESCRIPTIONS), correctedDescriptions(installed(DESCRIPTIONS)));
        Files.writeString(tables.resolve(RULES), correctedRules(installed(RULES)));
        return new TemplateValidator(List.of(folder.toUri().toURL(), toolkit()));
    }

    private static URL toolkit() {
        return DicomSRValidator.class.getProtectionDomain().getCodeSource().getLocation();
    }

    private static String installed(String name) throws IOException {
        try (InputStream in = DicomSRValidator.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** In template TID_300, rows 2, 9 and 10 match only their own relationship: three places. */
    private static String correctedDescriptions(String tables) {
        int start = tables.indexOf("<xsl:template name=\"TID_300\">");
        int end = tables.indexOf("</xsl:template>", start);
        Pattern row = Pattern.compile(
                "name=\"row\" select=\"'(?:2|9|10)'\"/>(?:(?!</xsl:call-template>).)*?name=\"matchRelationship\" select=\"''\"",
                Pattern.DOTALL);
        Matcher matcher = row.matcher(tables.substring(start, end));
        StringBuilder corrected = new StringBuilder();
        int places = 0;
        while (matcher.find()) {
            String call = matcher.group();
            matcher.appendReplacement(
                    corrected, Matcher.quoteReplacement(call.substring(0, call.length() - 4) + "\"'T'\""));
            places++;
        }
        matcher.appendTail(corrected);
        assertThat(places).as("places corrected in TID 300").isEqualTo(3);
        return tables.substring(0, start) + corrected + tables.substring(end);
    }

    /** A number without units has no value to miss: one place. */
    private static String correctedRules(String rules) {
        String test = "<xsl:if test=\"string-length(normalize-space(value)) = '0'\">";
        assertThat(rules.split(Pattern.quote(test), -1))
                .as("places corrected in the rules")
                .hasSize(2);
        return rules.replace(
                test, test.substring(0, test.length() - 2) + " and not(name() = 'num' and count(units) = 0)\">");
    }

    /** What it says of a file, line by line; the order of content items is checked too. */
    List<String> judge(Path file) {
        Thread here = Thread.currentThread();
        ClassLoader before = here.getContextClassLoader();
        here.setContextClassLoader(validate.getDeclaringClass().getClassLoader()); // else it mixes in our logging
        try {
            Object said = validate.invoke(validator, file.toString(), false, true, false, true, false);
            return ((String) said).lines().toList();
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new AssertionError("The toolkit's validator failed on " + file.getFileName(), e);
        } finally {
            here.setContextClassLoader(before);
        }
    }
}
