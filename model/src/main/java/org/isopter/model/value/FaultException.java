package org.isopter.model.value;

import java.util.List;
import java.util.stream.Collectors;

/** An input was refused; carries every fault that was found in it. */
public final class FaultException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final transient List<Fault> faults;

  /** Makes an exception of at least one fault. */
  public FaultException(List<Fault> faults) {
    super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  /** Makes an exception of one fault. */
  public FaultException(Fault fault) {
    this(List.of(fault));
  }

  /** Returns the faults, at least one. */
  public List<Fault> faults() {
    return faults;
  }
}
