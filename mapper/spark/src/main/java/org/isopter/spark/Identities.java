package org.isopter.spark;

import java.io.Serializable;
import java.util.Optional;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.RowMaker;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;

/**
 * Whether identities stay, and by which secret they are taken out. Plain enough to travel to the
 * machines that do the work; no text of it shows the secret.
 */
final class Identities implements Serializable {

  private static final long serialVersionUID = 1;

  private final @Nullable String secret;
  private final boolean freeText;

  private Identities(@Nullable String secret, boolean freeText) {
    this.secret = secret;
    this.freeText = freeText;
  }

  /** Identities and remarks stay. */
  static Identities kept() {
    return new Identities(null, true);
  }

  /**
   * Identities are taken out by a secret; refused if it is short.
   *
   * @param freeText whether remarks stay
   */
  static Result<Identities> taken(String secret, boolean freeText) {
    return SecretKey.of(secret).map(good -> new Identities(secret, freeText));
  }

  boolean stay() {
    return secret == null;
  }

  /** Returns what makes the rows of documents. */
  RowMaker rows() {
    Catalogue catalogue = Catalogue.standard();
    return new RowMaker(
        catalogue, new PoolReader(catalogue, Options.usual(), Release.R4), deidentifier());
  }

  private Optional<Deidentifier> deidentifier() {
    return Optional.ofNullable(secret)
        .map(SecretKey::of)
        .map(key -> new Deidentifier(key.orThrow(), freeText));
  }
}
