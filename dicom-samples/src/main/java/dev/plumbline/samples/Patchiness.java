// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Slow unevenness of the whole picture: uneven contact, uneven tissue. */
record Patchiness(Texture relief) implements Structure {
    private static final double HEIGHT_DB = 3;
    private static final double COLUMN_DB = 1.6;

    static Patchiness of(SampleRandom random) {
        return new Patchiness(new Texture(random));
    }

    @Override
    public Box bounds() {
        return Box.EVERYWHERE;
    }

    @Override
    public void paint(Cell cell) {
        cell.echo += HEIGHT_DB * relief.at(cell.across / 6.5, cell.layer / 4.5)
                + COLUMN_DB * relief.at(cell.across / 2.5, 77);
    }
}
