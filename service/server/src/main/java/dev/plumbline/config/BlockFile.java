// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.BlockList;
import java.io.InputStream;

/** The blocks by name, {@code blocks.json}; schema {@code docs/site/blocks.schema.json}. */
public final class BlockFile {
    static final String NAME = "blocks.json";

    private BlockFile() {}

    /**
     * Reads the list.
     *
     * @throws Refusal when the file is none, pointing at the field
     */
    public static BlockList read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-blocks/1", Foundations.FIELD, "blocks");
        Foundations foundations = new Foundations(root);
        return root.valid(() -> new BlockList(
                root.objects("blocks", "id", "code", "name", "region", "level", "parts", "foundation").stream()
                        .map(fields -> new BlockList.Block(
                                fields.text("id"),
                                fields.text("code"),
                                fields.text("name"),
                                fields.word("region", BlockList.Region.values(), BlockList.Region::word),
                                fields.optionalFlag("level").orElse(false),
                                fields.optionalFlag("parts").orElse(false),
                                foundations.of(fields)))
                        .toList()));
    }

    /** The list that ships. */
    public static BlockList shipped() {
        return SiteFile.shipped(NAME, BlockFile::read);
    }
}
