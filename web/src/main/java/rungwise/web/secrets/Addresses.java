package rungwise.web.secrets;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/** Addresses as they are counted: one home has one IPv4 address, but 2^64 of IPv6. */
final class Addresses {

  private static final int BYTES_OF_A_NETWORK = 8;

  private Addresses() {}

  /** The first 64 bits of an IPv6 address; any other address as it is. */
  static String network(String address) {
    if (!address.contains(":")) {
      return address;
    }
    try {
      return InetAddress.getByName(address) instanceof Inet6Address six
          ? HexFormat.of().formatHex(Arrays.copyOf(six.getAddress(), BYTES_OF_A_NETWORK))
          : address;
    } catch (UnknownHostException e) {
      return address;
    }
  }
}
