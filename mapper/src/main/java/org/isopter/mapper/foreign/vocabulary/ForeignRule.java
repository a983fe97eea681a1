package org.isopter.mapper.foreign.vocabulary;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/**
 * One habit of others that is understood.
 *
 * @param id the name that reports use
 * @param kind what it is about
 * @param reason why it is safe, in one sentence
 * @param takes what the rule takes
 * @param refuses what looks alike and is not taken by it
 */
@API(status = Status.STABLE)
public record ForeignRule(String id, String kind, String reason, Example takes, Example refuses) {

  /**
   * An example of what others write.
   *
   * @param difference how it differs from the plain observation of the list, in JSON; {@code null}
   *     stands for a member that is not there, a list for the entries of a bundle
   * @param json the whole observation or bundle
   */
  @API(status = Status.STABLE)
  public record Example(String difference, String json) {}
}
