// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A content tree as attributes: Document Content Macro and Document Relationship Macro, DICOM PS3.3 C.17.3, C.18. */
final class ContentWriter {
    private static final String DCMR_UID = "1.2.840.10008.8.1.1";

    /** The same few codes stand everywhere in a document; each is made once, and the items share it. */
    private final Map<Code, DataSet> codes = new HashMap<>();

    private ContentWriter() {}

    /** Puts the root item into the data set of its document. Do not change the items of codes afterwards; they are shared. */
    static void write(ContentItem root, DataSet document) {
        new ContentWriter().fill(document, root);
    }

    private List<DataSet> shared(Code code) {
        return List.of(codes.computeIfAbsent(code, ContentWriter::code));
    }

    private DataSet fill(DataSet item, ContentItem content) {
        if (content.relation() != Relation.NONE) {
            item.put(Tag.RELATIONSHIP_TYPE, content.relation().text());
        }
        content.observedAt().ifPresent(time -> item.put(Tag.OBSERVATION_DATE_TIME, time));
        item.put(Tag.VALUE_TYPE, content.value().valueType());
        content.name().ifPresent(name -> item.put(Tag.CONCEPT_NAME_CODE_SEQUENCE, shared(name)));
        value(item, content.value());
        if (!content.children().isEmpty()) {
            List<DataSet> children = new ArrayList<>(content.children().size());
            content.children().forEach(child -> children.add(fill(new DataSet(), child)));
            item.put(Tag.CONTENT_SEQUENCE, children);
        }
        return item;
    }

    private void value(DataSet item, ItemValue value) {
        if (value instanceof ItemValue.Container container) {
            item.put(Tag.CONTINUITY_OF_CONTENT, "SEPARATE");
            container.template().ifPresent(t -> item.put(Tag.CONTENT_TEMPLATE_SEQUENCE, List.of(template(t))));
        } else if (value instanceof ItemValue.Text text) {
            item.put(Tag.TEXT_VALUE, text.text());
        } else if (value instanceof ItemValue.Coded coded) {
            item.put(Tag.CONCEPT_CODE_SEQUENCE, shared(coded.code()));
        } else if (value instanceof ItemValue.Numeric numeric) {
            numeric(item, numeric);
        } else if (value instanceof ItemValue.Person person) {
            item.put(Tag.PERSON_NAME, person.name());
        } else if (value instanceof ItemValue.Uid uid) {
            item.put(Tag.UID, uid.uid());
        } else if (value instanceof ItemValue.Moment moment) {
            item.put(momentTag(moment.valueType()), moment.text());
        } else if (value instanceof ItemValue.Coordinates coordinates) {
            item.put(Tag.GRAPHIC_DATA, graphicData(coordinates.points()));
            item.put(Tag.GRAPHIC_TYPE, coordinates.type().name());
        } else if (value instanceof ItemValue.Image image) {
            item.put(Tag.REFERENCED_SOP_SEQUENCE, List.of(instance(image.instance())));
        } else if (value instanceof ItemValue.Composite composite) {
            item.put(Tag.REFERENCED_SOP_SEQUENCE, List.of(instance(composite.instance())));
        } else {
            throw new IllegalArgumentException("No item of value type " + value.valueType() + " is written.");
        }
    }

    private static DataSet template(ItemValue.Template template) {
        DataSet item = new DataSet().put(Tag.MAPPING_RESOURCE, template.resource());
        if (template.resource().equals("DCMR")) {
            item.put(Tag.MAPPING_RESOURCE_UID, DCMR_UID);
        }
        return item.put(Tag.TEMPLATE_IDENTIFIER, template.identifier());
    }

    private void numeric(DataSet item, ItemValue.Numeric numeric) {
        item.put(
                Tag.MEASURED_VALUE_SEQUENCE,
                numeric.measured().map(this::measured).stream().toList());
        numeric.qualifier().ifPresent(q -> item.put(Tag.NUMERIC_VALUE_QUALIFIER_CODE_SEQUENCE, shared(q)));
    }

    private DataSet measured(ItemValue.Measured measured) {
        DataSet item = new DataSet().put(Tag.MEASUREMENT_UNITS_CODE_SEQUENCE, shared(measured.unit()));
        item.put(Tag.NUMERIC_VALUE, measured.decimal());
        measured.exact().ifPresent(exact -> item.put(Tag.FLOATING_POINT_VALUE, new double[] {exact}));
        return item;
    }

    private static int momentTag(String valueType) {
        return switch (valueType) {
            case "DATE" -> Tag.DATE;
            case "TIME" -> Tag.TIME;
            default -> Tag.DATE_TIME;
        };
    }

    static float[] graphicData(List<PointPx> points) {
        float[] data = new float[points.size() * 2];
        for (int i = 0; i < points.size(); i++) {
            data[2 * i] = (float) points.get(i).column();
            data[2 * i + 1] = (float) points.get(i).row();
        }
        return data;
    }

    static DataSet instance(ItemValue.Instance instance) {
        DataSet item = new DataSet();
        item.put(Tag.REFERENCED_SOP_CLASS_UID, instance.sopClassUid());
        item.put(Tag.REFERENCED_SOP_INSTANCE_UID, instance.sopInstanceUid());
        instance.frameNumber().ifPresent(number -> item.put(Tag.REFERENCED_FRAME_NUMBER, Integer.toString(number)));
        return item;
    }

    static DataSet code(Code code) {
        return new DataSet()
                .put(Tag.CODE_VALUE, code.value())
                .put(Tag.CODING_SCHEME_DESIGNATOR, code.scheme())
                .put(Tag.CODE_MEANING, code.meaning());
    }
}
