// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;

/**
 * Addresses that share their first bits, as {@code 10.1.2.0/24}; a single address has all its bits. Source: RFC 4632, 3.1.
 *
 * @param bits how many of the first bits must be equal
 */
public record AddressRange(InetAddress network, int bits) {
    /**
     * Reads an address or a range; names are not looked up.
     *
     * @throws IllegalArgumentException where it is neither
     */
    public static AddressRange of(String text) {
        int slash = text.indexOf('/');
        String address = slash < 0 ? text : text.substring(0, slash);
        if (!address.matches("[0-9.]+|[0-9a-fA-F:.]*:[0-9a-fA-F:.]*")) {
            throw new IllegalArgumentException("An address or a range such as 10.1.2.0/24 is needed.");
        }
        try {
            InetAddress network = InetAddress.getByName(address);
            int all = network.getAddress().length * Byte.SIZE;
            int bits = slash < 0 ? all : Integer.parseInt(text.substring(slash + 1));
            if (bits < 0 || bits > all) {
                throw new IllegalArgumentException("A range has 0 to " + all + " bits.");
            }
            return new AddressRange(network, bits);
        } catch (UnknownHostException | NumberFormatException e) {
            throw new IllegalArgumentException("An address or a range such as 10.1.2.0/24 is needed.", e);
        }
    }

    public boolean holds(InetAddress address) {
        byte[] mine = network.getAddress();
        byte[] other = address.getAddress();
        int whole = bits / Byte.SIZE;
        if (mine.length != other.length || !Arrays.equals(mine, 0, whole, other, 0, whole)) {
            return false;
        }
        int rest = bits % Byte.SIZE;
        int mask = 0xff << (Byte.SIZE - rest) & 0xff;
        return rest == 0 || (mine[whole] & mask) == (other[whole] & mask);
    }
}
