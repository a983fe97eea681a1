package org.isopter.model.finding;

import java.util.Optional;
import org.isopter.model.value.Outcome;

/** The parts of a checked panel, read by their typed keys to build the composite value. */
public final class Values {

  private final EncodedValue panel;

  public Values(EncodedValue panel) {
    this.panel = panel;
  }

  EncodedValue panel() {
    return panel;
  }

  /** Returns a part that the layout requires. */
  public <P> P get(Part<?, P> part) {
    return find(part).orElseThrow(() -> new IllegalStateException(part.key() + " was not checked"));
  }

  /** Returns a part that may be left out. */
  public <P> Optional<P> find(Part<?, P> part) {
    return outcome(part).flatMap(Outcome::ifFound);
  }

  /** Returns a part that may be left out or stated as absent. */
  public <P> Optional<Outcome<P>> outcome(Part<?, P> part) {
    Optional<Outcome<Datum>> outcome =
        part.key().equals(Part.VALUE)
            ? panel.value().map(Outcome::found)
            : Optional.ofNullable(panel.parts().get(part.key()));
    return outcome.map(found -> found.map(part.shape()::fromDatum));
  }
}
