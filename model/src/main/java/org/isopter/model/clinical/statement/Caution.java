package org.isopter.model.clinical.statement;

/** What has to stand beside every derived statement that people read. */
public final class Caution {

  /** The caution, in one sentence for each thing that a statement is not. */
  public static final String TEXT =
      "Derived for record-keeping from the facts named. Not a medical device, not a diagnosis, not"
          + " triage. That nothing is said means nothing. Local protocols and a licensed clinician"
          + " decide.";

  private Caution() {}
}
