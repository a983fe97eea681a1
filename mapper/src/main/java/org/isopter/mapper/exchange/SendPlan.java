package org.isopter.mapper.exchange;

/**
 * How transactions are sent.
 *
 * @param largest how many bytes one may have; what is larger is sent in parts
 * @param byId whether updates may name resources by ids that are no UUIDs, since they come from the
 *     very server
 */
public record SendPlan(long largest, boolean byId) {

  /** Up to {@link Sender#USUAL_SIZE}, and no ids of other servers. */
  public static final SendPlan USUAL = new SendPlan(Sender.USUAL_SIZE, false);

  public SendPlan {
    if (largest < 1) {
      throw new IllegalArgumentException("a transaction has at least one byte");
    }
  }
}
