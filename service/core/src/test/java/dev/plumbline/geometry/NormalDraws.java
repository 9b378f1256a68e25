// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/** Standard normal numbers for simulations, a row for each draw. */
public final class NormalDraws {
    private NormalDraws() {}

    /**
     * Evenly spread: points of a Sobol sequence, shifted at random, through the inverse normal distribution. A variance
     * estimated from them is far closer than one from as many independent draws.
     *
     * <p>Source: P. Bratley, B. L. Fox, Algorithm 659, ACM TOMS 14 (1988) 88, as in Commons Math (cited there); shift of R.
     * Cranley, T. N. L. Patterson, SIAM J. Numer. Anal. 13 (1976) 904 (from memory).
     */
    public static double[][] even(int draws, int inputs, long seed) {
        double[] shift = new Random(seed).doubles(inputs).toArray();
        SobolSequenceGenerator sobol = new SobolSequenceGenerator(inputs);
        NormalDistribution normal = new NormalDistribution();
        double[][] rows = new double[draws][];
        for (int i = 0; i < draws; i++) {
            rows[i] = sobol.nextVector();
            for (int k = 0; k < inputs; k++) {
                double share = (rows[i][k] + shift[k]) % 1;
                rows[i][k] = normal.inverseCumulativeProbability(Math.max(share, 1e-12));
            }
        }
        return rows;
    }

    public static double[][] independent(int draws, int inputs, long seed) {
        Random random = new Random(seed);
        double[][] rows = new double[draws][inputs];
        for (double[] row : rows) {
            for (int k = 0; k < inputs; k++) {
                row[k] = random.nextGaussian();
            }
        }
        return rows;
    }
}
