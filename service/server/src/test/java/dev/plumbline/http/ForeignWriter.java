// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import dev.plumbline.ForeignMarks;
import dev.plumbline.dicom.OutsideProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Programs that write the same four marks on a frame, each in its own layout: skin and shaft as lines, target, artery. */
enum ForeignWriter {
    /** Debian's python3-pydicom: Enhanced SR, TID 1500, the label in a comment. */
    PYDICOM {
        @Override
        Path write(Path folder, Path frame, List<Drawn> marks) throws Exception {
            return ForeignMarks.write(folder, frame, "", spec(marks));
        }
    },
    /** The same library: graphics over a grey image, named by text objects. */
    PYDICOM_GREY_STATE {
        @Override
        Path write(Path folder, Path frame, List<Drawn> marks) throws Exception {
            return ForeignMarks.write(folder, frame, "\"kind\":\"grey\",", spec(marks));
        }
    },
    /** The same for a colour image. */
    PYDICOM_COLOUR_STATE {
        @Override
        Path write(Path folder, Path frame, List<Drawn> marks) throws Exception {
            return ForeignMarks.write(folder, frame, "\"kind\":\"colour\",", spec(marks));
        }
    },
    /** Adapters of npm's dcmjs: Enhanced SR, TID 1500, the label in a finding. */
    DCMJS {
        @Override
        Path write(Path folder, Path frame, List<Drawn> marks) throws Exception {
            ObjectMapper mapper = new ObjectMapper();
            ArrayNode spec = mapper.createArrayNode();
            for (Drawn mark : marks) {
                var one = spec.addObject().put("label", mark.label()).put("type", tool(mark));
                ArrayNode points = one.putArray("points");
                List<double[]> ends = mark.points().size() == 1
                        ? List.of(
                                mark.points().get(0),
                                new double[] {mark.points().get(0)[0] + 20, 10})
                        : mark.points();
                ends.forEach(point -> points.addArray().add(point[0]).add(point[1]));
            }
            Path given = Files.writeString(folder.resolve("marks.json"), spec.toString());
            Path out = folder.resolve("dcmjs.dcm");
            OutsideProgram.run("node", "src/test/npm/marks.mjs", frame.toString(), given.toString(), out.toString());
            return out;
        }

        private String tool(Drawn mark) {
            return mark.points().size() == 1 ? "ArrowAnnotate" : mark.points().size() == 2 ? "Length" : "FreehandRoi";
        }
    },
    /** Debian's dcmtk: Comprehensive SR without measurement groups, coordinates by reference, concepts of a site's own. */
    DCMTK {
        @Override
        Path write(Path folder, Path frame, List<Drawn> marks) throws Exception {
            JsonNode header = new ObjectMapper().readTree(OutsideProgram.run("dcm2json", frame.toString()));
            StringBuilder items = new StringBuilder();
            int node = 3; // xml2dsr counts: the root is 1, the container of the findings 2
            for (Drawn mark : marks) {
                items.append(item(mark, node, header));
                node += mark.points().size() == 1 ? 2 : 4; // with the image; and with the number and its reference
            }
            Path xml = Files.writeString(
                    folder.resolve("report.xml"),
                    REPORT.formatted(
                            value(header, "00100020"),
                            header.at("/00100010/Value/0/Alphabetic").asText().split("\\^", -1)[0],
                            header.at("/00100010/Value/0/Alphabetic").asText().split("\\^", -1)[1],
                            value(header, "0020000D"),
                            value(header, "0020000E"),
                            image(header),
                            items));
            Path out = folder.resolve("dcmtk.dcm");
            OutsideProgram.run("xml2dsr", xml.toString(), out.toString());
            return out;
        }

        /** A point carries its concept itself; a line is measured by a number that refers to it. */
        private String item(Drawn mark, int node, JsonNode header) {
            String concept = code("concept", "S" + node, "99SITE", mark.label());
            String image = "<image><relationship>SELECTED FROM</relationship>" + image(header) + "</image>";
            if (mark.points().size() == 1) {
                return "<scoord type=\"POINT\"><relationship>CONTAINS</relationship>" + concept + image + "<data>"
                        + data(mark) + "</data></scoord>";
            }
            String closed = mark.points().size() > 2
                    ? data(mark) + "," + at(mark.points().get(0))
                    : data(mark);
            return "<scoord type=\"POLYLINE\" id=\"" + node + "\"><relationship>CONTAINS</relationship>"
                    + image + "<data>" + closed + "</data></scoord><num><relationship>CONTAINS</relationship>" + concept
                    + "<reference ref=\"" + node + "\"><relationship>INFERRED FROM</relationship></reference>"
                    + "<value>1</value>" + code("unit", "mm", "UCUM", "mm") + "</num>";
        }

        private String data(Drawn mark) {
            return mark.points().stream().map(this::at).collect(Collectors.joining(","));
        }

        private String at(double[] point) {
            return String.format(Locale.ROOT, "%s/%s", point[0], point[1]);
        }

        private String image(JsonNode header) {
            return "<value><sopclass uid=\"" + value(header, "00080016") + "\"/><instance uid=\""
                    + value(header, "00080018") + "\"/></value>";
        }

        private String value(JsonNode header, String tag) {
            return header.at("/" + tag + "/Value/0").asText();
        }

        private String code(String element, String value, String scheme, String meaning) {
            return "<" + element + "><value>" + value + "</value><scheme><designator>" + scheme
                    + "</designator></scheme><meaning>" + meaning + "</meaning></" + element + ">";
        }
    };

    private static final String REPORT = """
            <?xml version="1.0" encoding="UTF-8"?>
            <report type="Comprehensive SR">
            <sopclass uid="1.2.840.10008.5.1.4.1.1.88.33"/><charset>ISO_IR 192</charset><modality>SR</modality>
            <device><manufacturer>Unspecified</manufacturer><model>Unspecified</model></device>
            <patient><id>%1$s</id><name><first>%3$s</first><last>%2$s</last></name></patient>
            <study uid="%4$s"/><series uid="2.25.77001"><number>7</number></series>
            <instance uid="2.25.77002"><number>1</number></instance>
            <evidence type="Current Requested Procedure"><study uid="%4$s"><series uid="%5$s">%6$s</series></study></evidence>
            <document><completion flag="COMPLETE"/><verification flag="UNVERIFIED"/>
            <content><date>2026-01-05</date><time>09:30:00</time><container flag="SEPARATE">
            <concept><value>18748-4</value><scheme><designator>LN</designator></scheme>
            <meaning>Diagnostic imaging report</meaning></concept>
            <container flag="SEPARATE"><relationship>CONTAINS</relationship>
            <concept><value>121070</value><scheme><designator>DCM</designator></scheme><meaning>Findings</meaning></concept>
            %7$s
            </container></container></content></document></report>
            """;

    /** One mark: a point, a line of two points, or the corners of an outline. */
    record Drawn(String label, List<double[]> points) {}

    /** The written file. */
    abstract Path write(Path folder, Path frame, List<Drawn> marks) throws Exception;

    byte[] bytes(Path folder, Path frame, List<Drawn> marks) throws Exception {
        return Files.readAllBytes(write(folder, frame, marks));
    }

    private static String[] spec(List<Drawn> marks) throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        return marks.stream()
                .map(mark -> {
                    var one = mapper.createObjectNode()
                            .put("label", mark.label())
                            .put("type", mark.points().size() == 1 ? "POINT" : "POLYLINE");
                    ArrayNode data = one.putArray("points");
                    mark.points().forEach(point -> data.add(point[0]).add(point[1]));
                    if (mark.points().size() > 2) {
                        data.add(mark.points().get(0)[0]).add(mark.points().get(0)[1]); // closed
                    }
                    return one.toString();
                })
                .toArray(String[]::new);
    }
}
