// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Which room may know which: data walks one way, and each rule is shown to catch an offender. */
class ArchitectureTest {
    private static final JavaClasses ALL = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.plumbline");

    /** Every package and the packages of ours that it may import, besides itself. */
    private static final Map<String, Set<String>> MAY_IMPORT = mayImport();

    private static Map<String, Set<String>> mayImport() {
        Map<String, Set<String>> rooms = new LinkedHashMap<>();
        rooms.put("problem", Set.of());
        rooms.put("geometry", Set.of("problem"));
        rooms.put("needle", Set.of("problem", "geometry"));
        rooms.put("plan", Set.of("problem", "geometry", "needle"));
        rooms.put("observation", Set.of("problem", "geometry", "needle", "plan"));
        rooms.put("deviation", Set.of("problem", "geometry", "needle", "plan", "observation"));
        rooms.put("sight", Set.of("problem", "geometry", "needle", "plan"));
        rooms.put("agents", Set.of("problem", "geometry"));
        rooms.put("procedure", Set.of("problem", "geometry", "needle", "plan", "sight", "agents"));
        rooms.put("intake", Set.of("problem", "geometry", "needle", "plan", "observation"));
        rooms.put("record", Set.copyOf(rooms.keySet()));
        rooms.put("review", Set.copyOf(rooms.keySet()));
        Set<String> core = Set.copyOf(rooms.keySet());
        rooms.put("samples", core);
        rooms.put("document", core);
        rooms.put("config", with(core, "document"));
        rooms.put("drawing", core);
        rooms.put("readout", core);
        rooms.put("dicom", with(core, "samples", "document", "drawing", "readout"));
        rooms.put("archive", with(core, "document", "config", "drawing", "dicom"));
        rooms.put("dimse", with(core, "document", "dicom"));
        rooms.put("multipart", Set.of("problem"));
        rooms.put("worklist", with(core, "dicom", "dimse"));
        rooms.put("dispatch", with(core, "document", "config", "dicom", "dimse", "archive", "multipart", "worklist"));
        rooms.put("pages", with(core, "readout"));
        String[] behindTheDoors = {
            "document", "config", "drawing", "dicom", "dimse", "archive", "multipart", "worklist", "dispatch"
        };
        rooms.put("http", with(with(core, behindTheDoors), "pages"));
        rooms.put("cli", with(core, behindTheDoors));
        rooms.put("app", Set.copyOf(rooms.keySet()));
        return rooms;
    }

    private static Set<String> with(Set<String> some, String... more) {
        List<String> all = new ArrayList<>(some);
        all.addAll(Arrays.asList(more));
        return Set.copyOf(all);
    }

    /** A rule and the source of a class that breaks it. */
    record Guarded(ArchRule rule, String offenderPackage, String offenderBody) {
        @Override
        public String toString() {
            return rule.getDescription();
        }
    }

    static Stream<Guarded> rules() {
        Stream<Guarded> rooms = MAY_IMPORT.keySet().stream()
                .filter(room -> !room.equals("app"))
                .map(room -> imports(room, MAY_IMPORT.get(room)));
        Stream<Guarded> outside = Stream.of(
                onlyIn("the toolkit can be swapped", "com.pixelmed..", "com.pixelmed.dicom.AttributeList", "dicom"),
                onlyIn("state stays behind the store's port", "java.sql..", "java.sql.Connection", "archive"),
                onlyIn("HTTP is a door", "io.javalin..", "io.javalin.http.Context", "http", "app"),
                onlyIn("paper is one form among several", "org.apache.pdfbox..", "org.apache.pdfbox.Loader", "readout"),
                onlyIn("the command line is a door", "picocli..", "picocli.CommandLine", "cli", "app"),
                madeOnlyByApp("java.time.Clock", "systemUTC"),
                madeOnlyByApp("java.time.Clock", "systemDefaultZone"),
                madeOnlyByApp("java.util.UUID", "randomUUID"),
                madeOnlyByApp("java.time.Instant", "now"),
                madeOnlyByApp("java.time.OffsetDateTime", "now"),
                madeOnlyByApp("java.lang.System", "currentTimeMillis"));
        return Stream.concat(rooms, outside);
    }

    private static Guarded imports(String room, Set<String> allowed) {
        String[] forbidden = MAY_IMPORT.keySet().stream()
                .filter(other -> !other.equals(room) && !allowed.contains(other))
                .toArray(String[]::new);
        ArchRule rule = noClasses()
                .that()
                .resideInAPackage(full(room))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        Arrays.stream(forbidden).map(ArchitectureTest::full).toArray(String[]::new))
                .because("data walks one way and " + room + " stands below them");
        return new Guarded(rule, room, publicClassOf(forbidden) + " offence;");
    }

    private static String publicClassOf(String... packages) {
        return ALL.stream()
                .filter(c ->
                        Arrays.stream(packages).anyMatch(p -> c.getPackageName().equals(full(p))))
                .filter(c -> c.isTopLevelClass()
                        && c.getModifiers().contains(com.tngtech.archunit.core.domain.JavaModifier.PUBLIC))
                .findFirst()
                .orElseThrow()
                .getFullName();
    }

    private static Guarded onlyIn(String because, String packages, String offence, String... rooms) {
        ArchRule rule = noClasses()
                .that()
                .resideInAPackage("dev.plumbline..")
                .and()
                .resideOutsideOfPackages(
                        Arrays.stream(rooms).map(ArchitectureTest::full).toArray(String[]::new))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(packages)
                .because(because);
        return new Guarded(rule, "record", offence + " offence;");
    }

    private static Guarded madeOnlyByApp(String owner, String method) {
        ArchRule rule = noClasses()
                .that()
                .resideInAPackage("dev.plumbline..")
                .and()
                .resideOutsideOfPackage(full("app"))
                .should()
                .callMethodWhere(DescribedPredicate.describe(
                        owner + "." + method + " without a clock",
                        (JavaMethodCall call) -> call.getTargetOwner().isEquivalentTo(ownerClass(owner))
                                && call.getName().equals(method)
                                && call.getTarget().getRawParameterTypes().stream()
                                        .noneMatch(type -> type.isEquivalentTo(Clock.class))))
                .because("clocks and chance are passed in, so that the same input gives the same bytes: " + owner + "."
                        + method);
        return new Guarded(rule, "geometry", "Object offence = " + owner + "." + method + "();");
    }

    private static Class<?> ownerClass(String name) {
        try {
            return Class.forName(name);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String full(String room) {
        return "dev.plumbline." + room;
    }

    @ParameterizedTest
    @MethodSource("rules")
    void everyRuleHolds(Guarded guarded) {
        guarded.rule().check(ALL);
    }

    @ParameterizedTest
    @MethodSource("rules")
    void everyRuleCatchesAnOffender(Guarded guarded, @TempDir Path folder) throws IOException {
        Path source = folder.resolve("Offender.java");
        Files.writeString(
                source,
                "package " + full(guarded.offenderPackage()) + "; class Offender { " + guarded.offenderBody() + " }");
        int failed = ToolProvider.getSystemJavaCompiler()
                .run(null, null, null, "-proc:none", "-cp", System.getProperty("java.class.path"), source.toString());
        assertThat(failed).as("the offender compiles").isZero();
        JavaClasses offender = new ClassFileImporter().importPath(folder);
        assertThat(guarded.rule().evaluate(offender).hasViolation()).isTrue();
    }

    @Test
    void everyPackageNamedExistsAndNoneIsForgotten() {
        List<String> packages = ALL.stream()
                .map(c -> c.getPackageName().replace("dev.plumbline.", ""))
                .distinct()
                .toList();
        assertThat(packages).containsExactlyInAnyOrderElementsOf(MAY_IMPORT.keySet());
    }
}
