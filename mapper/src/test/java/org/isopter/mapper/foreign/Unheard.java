package org.isopter.mapper.foreign;

import java.util.List;
import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.Origin;
import org.isopter.mapper.foreign.run.Receiver;
import org.isopter.model.value.Fault;

/** Hears nothing of a run but mistakes, which end it. */
public final class Unheard implements Receiver {

  @Override
  public void refused(Origin origin, List<Fault> faults) {}

  @Override
  public void failed(Origin origin, RuntimeException mistake) {
    throw mistake;
  }

  @Override
  public void deleted(Origin origin, String name) {}

  @Override
  public void read(Batch batch) {}
}
