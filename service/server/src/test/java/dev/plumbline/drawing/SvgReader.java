// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads a drawing back with the platform's XML parser, to see what it says rather than how it was made. */
record SvgReader(Document document) {
    static SvgReader of(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            return new SvgReader(factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg))));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalArgumentException("The drawing is no well-formed XML.", e);
        }
    }

    List<Element> all(String name) {
        NodeList nodes = document.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    List<Element> ofClass(String kind) {
        return all("*").stream()
                .filter(element -> element.getAttribute("class").equals(kind))
                .toList();
    }

    Element one(String kind) {
        List<Element> found = ofClass(kind);
        if (found.size() != 1) {
            throw new AssertionError(found.size() + " elements of class " + kind + " instead of one.");
        }
        return found.get(0);
    }

    static Xy start(Element line) {
        return new Xy(number(line, "x1"), number(line, "y1"));
    }

    static Xy end(Element line) {
        return new Xy(number(line, "x2"), number(line, "y2"));
    }

    static List<Xy> points(Element polygon) {
        return Arrays.stream(polygon.getAttribute("points").split(" "))
                .map(pair -> pair.split(","))
                .map(pair -> new Xy(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])))
                .toList();
    }

    static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    /** Everything a reader sees or hears, once. */
    Stream<String> texts() {
        return Stream.of("title", "desc", "text")
                .flatMap(name -> all(name).stream())
                .filter(element -> !element.getAttribute("class").equals("halo"))
                .map(Element::getTextContent);
    }

    String text() {
        return String.join(" ", texts().toList());
    }
}
