package org.lehrcase.core.device;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Which traits may bind a place. What a maker left at its default, or what many machines share, is
 * refused; every three traits that open must together hold at least {@value #MIN_BITS} bits that a
 * stranger cannot guess.
 *
 * <p>Bits are estimated from below: four for a hexadecimal digit, two for any other character,
 * never more than the kind is trusted for.
 */
public final class TraitRules {
  /** Fewest random bits of three traits that open. */
  public static final int MIN_BITS = 90;

  /** Most traits that one binding uses. */
  public static final int MAX_TRAITS = 5;

  private static final int MIN_DIFFERENT_CHARACTERS = 4;
  private static final int MAC_DIGITS = 12;
  private static final int MAC_MAKER_BITS = 24;

  /** What boards and disks say whose maker filled nothing in; compared without spaces and dots. */
  private static final Set<String> DEFAULTS =
      Set.of(
          "TOBEFILLEDBYOEM",
          "DEFAULTSTRING",
          "SYSTEMSERIALNUMBER",
          "SERIALNUMBER",
          "NOTSPECIFIED",
          "NOTAPPLICABLE",
          "NOTAVAILABLE",
          "NONE",
          "UNKNOWN",
          "INVALID",
          "EMPTY",
          "OEM",
          "UNINITIALIZED",
          "03000200040005000006000700080009",
          "00020003000400050006000700080009",
          "12345678123456781234567812345678",
          "0123456789",
          "123456789",
          "1234567890",
          "0123456789ABCDEF",
          "123456789ABCDEF",
          "FEDCBA9876543210",
          "00112233445566778899AABBCCDDEEFF");

  private TraitRules() {}

  /**
   * Says whether a trait may be used at all.
   *
   * @param trait the trait
   * @return false for empty, all-zero, all-F, repeated or default values and for network addresses
   *     that are not a built-in card's own
   */
  public static boolean isUsable(Trait trait) {
    String value = trait.value();
    if (DEFAULTS.contains(value) || value.chars().distinct().count() < MIN_DIFFERENT_CHARACTERS) {
      return false;
    }
    return trait.kind() != TraitKind.NETWORK || addressesAreOwn(value);
  }

  /**
   * Estimates from below how many bits of a trait a stranger cannot guess.
   *
   * @param trait a usable trait
   * @return bits
   */
  public static int bits(Trait trait) {
    String value = trait.value();
    boolean hex = value.chars().allMatch(c -> Character.digit(c, 16) >= 0 && c < 128);
    int bits = value.length() * (hex ? 4 : 2);
    if (trait.kind() == TraitKind.NETWORK) {
      bits -= MAC_MAKER_BITS * (value.length() / MAC_DIGITS);
    }
    return Math.min(bits, trait.kind().maxBits());
  }

  /**
   * Chooses the traits that bind: the strongest five of those that may be used.
   *
   * @param read what the machine says
   * @return at most {@value #MAX_TRAITS} traits, in the order of their kinds
   */
  public static List<Trait> choose(List<Trait> read) {
    return usable(read).stream()
        .sorted(Comparator.comparingInt(TraitRules::bits).reversed())
        .limit(MAX_TRAITS)
        .sorted(Comparator.comparing(Trait::kind))
        .toList();
  }

  /** Returns the traits that may be used, the first of each kind, in the order of their kinds. */
  static List<Trait> usable(List<Trait> read) {
    Set<TraitKind> seen = EnumSet.noneOf(TraitKind.class);
    List<Trait> usable = new ArrayList<>();
    for (Trait trait : read) {
      if (isUsable(trait) && seen.add(trait.kind())) {
        usable.add(trait);
      }
    }
    usable.sort(Comparator.comparing(Trait::kind));
    return usable;
  }

  static boolean isEnough(Trait first, Trait second, Trait third) {
    return bits(first) + bits(second) + bits(third) >= MIN_BITS;
  }

  /** IEEE 802, 8.2: a group address or a locally set one is not a card's own. */
  private static boolean addressesAreOwn(String value) {
    if (value.length() % MAC_DIGITS != 0) {
      return false;
    }
    for (int at = 0; at < value.length(); at += MAC_DIGITS) {
      int second = Character.digit(value.charAt(at + 1), 16);
      if (second < 0 || (second & 3) != 0) {
        return false;
      }
    }
    return true;
  }
}
