package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is found in a resource: what is wrong, and what only the reference validator can judge. */
final class Judgement {

  private final List<Verdict.Breach> breaches = new ArrayList<>();
  private final List<Verdict.Breach> doubts = new ArrayList<>();

  /** Adds something that is wrong. */
  void wrong(Item at, String text) {
    add(new Verdict.Breach(at.path(), text));
  }

  /** Adds that a member is missing. */
  void lacks(Item at, String name, String text) {
    add(new Verdict.Breach(at.path() + "." + name, text));
  }

  private void add(Verdict.Breach breach) {
    if (!breaches.contains(breach)) {
      breaches.add(breach);
    }
  }

  /** Adds something that is not known here. */
  void doubt(Item at, String reason) {
    doubts.add(new Verdict.Breach(at.path(), reason));
  }

  /** Returns the verdict; a doubt about what is refused anyway is none. */
  Verdict verdict() {
    Optional<Verdict.Breach> open = doubts.stream().filter(doubt -> !isRefused(doubt)).findFirst();
    if (open.isPresent()) {
      return new Verdict.Undecided(open.get().text() + " at " + open.get().path());
    }
    return breaches.isEmpty() ? new Verdict.Valid() : new Verdict.Invalid(breaches);
  }

  private boolean isRefused(Verdict.Breach doubt) {
    return breaches.stream()
        .anyMatch(
            breach ->
                (doubt.path() + ".").startsWith(breach.path() + ".")
                    || (breach.path() + ".").startsWith(doubt.path() + "."));
  }
}
