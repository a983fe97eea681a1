package org.isopter.profiles;

/** One validator for all tests: each of its own would read every definition of the standard. */
final class Validators {

  private static final ProfileValidator STANDARD = new ProfileValidator();

  private Validators() {}

  static ProfileValidator standard() {
    return STANDARD;
  }
}
