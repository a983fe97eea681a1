package org.isopter.cli;

import java.util.Optional;
import java.util.Set;

/** The forms that a command reads, and the one that the command line states. */
interface InputForms {

  /** Returns the form that the command line states for the inputs. */
  Optional<Form> stated();

  /** Returns the forms that are read. */
  Set<Form> accepted();
}
