package org.isopter.task.input;

import java.util.Optional;
import java.util.Set;

/** The forms that a command reads, and the one that the command line states. */
public interface InputForms {

  /** Returns the form that the command line states for the inputs. */
  Optional<InputForm> stated();

  /** Returns the forms that are read. */
  Set<InputForm> accepted();
}
