package org.isopter.profiles.compiled;

/** Something that only the reference validator can judge. */
final class Unknown extends RuntimeException {

  private static final long serialVersionUID = 1L;

  Unknown(String reason) {
    super(reason, null, false, false);
  }
}
