package org.isopter.mapper.privacy;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * The secret by which pseudonyms are made (HMAC with SHA-256, RFC 2104 and FIPS 180-4).
 *
 * <p>Who has it can find the pseudonym of a known person again; without it none can be turned back.
 * The same key gives the same pseudonyms, so that pools made at different times can be joined.
 *
 * <p>Safe for use by several threads at once.
 */
public final class SecretKey {

  /** The environment variable that may hold the secret; a command line is seen by others. */
  public static final String VARIABLE = "ISOPTER_POOL_KEY";

  /** The fewest bytes of a key: fewer can be guessed. */
  public static final int SHORTEST = 24;

  /** How the secret of the demo begins: everyone can read it. */
  private static final String DEMO = "This key is public";

  private static final String ALGORITHM = "HmacSHA256";

  /** Hexadecimal digits of a pseudonym: 80 bits, so that two of ten million persons differ. */
  private static final int DIGITS = 20;

  private final ThreadLocal<Mac> macs;
  private final boolean demo;

  private SecretKey(byte[] secret, boolean demo) {
    this.demo = demo;
    SecretKeySpec key = new SecretKeySpec(secret, ALGORITHM);
    this.macs = ThreadLocal.withInitial(() -> mac(key));
  }

  /**
   * Returns the key of a secret; white space around it is none of it. Refused where it is short, or
   * so regular that it might be guessed.
   */
  public static Result<SecretKey> of(String secret) {
    String text = secret.strip();
    int length = text.getBytes(UTF_8).length;
    if (length < SHORTEST) {
      return refused(length + " bytes", "a secret of at least " + SHORTEST + " bytes");
    }
    if (!Guessing.isHard(text)) {
      return refused(
          "a secret that might be guessed",
          "random characters worth at least " + Guessing.FEWEST_BITS + " bits");
    }
    return Result.ok(new SecretKey(text.getBytes(UTF_8), text.startsWith(DEMO)));
  }

  /** Says whether this is the public key of the demo, which keeps nothing secret. */
  public boolean isOfDemo() {
    return demo;
  }

  /**
   * Returns the key of a project: its pseudonyms cannot be joined with those of another project,
   * nor with those of this key.
   */
  public SecretKey project(String name) {
    return new SecretKey(digest("project", name), demo);
  }

  private static Result<SecretKey> refused(String seen, String wanted) {
    String advice = "make one at random, keep it apart from the tables, and use it again";
    return Result.refused(new Fault("key", seen, wanted, advice));
  }

  /** Returns the pseudonym of something of a kind: hexadecimal digits, always the same. */
  public String pseudonym(String kind, String name) {
    return HexFormat.of().formatHex(digest(kind, name)).substring(0, DIGITS);
  }

  /** Returns a number from 0 to below a bound, always the same for the same name. */
  public int number(String kind, String name, int bound) {
    byte[] digest = digest(kind, name);
    long bits = 0;
    for (int i = 0; i < 7; i++) {
      bits = (bits << 8) | (digest[i] & 0xff);
    }
    return (int) (bits % bound);
  }

  private byte[] digest(String kind, String name) {
    // It ends as it began. To make one takes longer than to use it.
    Mac mac = macs.get();
    // No kind holds a zero byte: what is hashed tells kind and name apart.
    mac.update(kind.getBytes(UTF_8));
    mac.update((byte) 0);
    return mac.doFinal(name.getBytes(UTF_8));
  }

  private static Mac mac(SecretKeySpec key) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      return mac;
    } catch (NoSuchAlgorithmException | InvalidKeyException impossible) {
      throw new IllegalStateException("every Java has " + ALGORITHM, impossible);
    }
  }
}
