// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * Pseudo-random numbers that are the same on every machine and for every Java version.
 *
 * <p>Source: Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (SplitMix64); constants from
 * memory.
 */
public final class SampleRandom {
    private static final long GOLDEN = 0x9e3779b97f4a7c15L;
    private static final double UNIT = 0x1.0p-53;

    private final long seed;
    private long state;

    public SampleRandom(long seed) {
        this.seed = seed;
        this.state = seed;
    }

    /** A stream of its own for a named part; the order in which parts are drawn then does not matter. */
    public SampleRandom of(String part) {
        return new SampleRandom(mix(seed ^ mix(part.hashCode() + GOLDEN)));
    }

    public long bits() {
        state += GOLDEN;
        return mix(state);
    }

    /** Uniform in [0, 1). */
    public double uniform() {
        return (bits() >>> 11) * UNIT;
    }

    /** Uniform in [low, high). */
    public double between(double low, double high) {
        return low + (high - low) * uniform();
    }

    static long mix(long value) {
        long z = (value ^ (value >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
