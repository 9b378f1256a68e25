// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.geometry.Foundation;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The blocks by name. Names only: no depth, angle, volume or dose belongs to a block here. */
public record BlockList(List<Block> blocks) {
    public BlockList {
        blocks = List.copyOf(blocks);
        Set<String> ids = new HashSet<>();
        Set<String> codes = new HashSet<>();
        for (Block block : blocks) {
            if (!ids.add(block.id()) || !codes.add(block.code())) {
                throw new IllegalArgumentException("Two blocks are called " + block.id() + " or " + block.code() + ".");
            }
        }
    }

    /**
     * One block.
     *
     * @param id the word in a case document
     * @param code in the private coding scheme
     * @param level whether a vertebral level, rib or place on the limb is stated with it
     * @param parts whether the nerves done are listed with it
     */
    public record Block(
            String id, String code, String name, Region region, boolean level, boolean parts, Foundation foundation) {}

    /** Where on the body. */
    public enum Region {
        HEAD_AND_NECK("headAndNeck"),
        UPPER_LIMB("upperLimb"),
        TRUNK("trunk"),
        LOWER_LIMB("lowerLimb"),
        OTHER("other");

        private final String word;

        Region(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * A block by its id.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a block that is not listed
     */
    public Block block(String id) {
        return blocks.stream()
                .filter(block -> block.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Refusal(new Problem.InvalidValue(
                        "/block",
                        "This block is not in the site's list.",
                        "Give a listed id, or \"other\" and its name in words.")));
    }
}
