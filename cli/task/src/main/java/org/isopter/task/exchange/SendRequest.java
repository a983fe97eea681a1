package org.isopter.task.exchange;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.exchange.SendPlan;
import org.isopter.task.report.UsageException;

/**
 * What is sent where.
 *
 * @param access the server
 * @param journal the file of what it has stored; empty only where nothing is sent
 * @param plan how transactions are sent
 * @param dry whether to show what would be sent, and send nothing
 */
public record SendRequest(ServerAccess access, Optional<Path> journal, SendPlan plan, boolean dry) {

  private static final int KB = 1024;

  /** Returns a request to send as usual, and to keep what is stored in a journal. */
  public static SendRequest to(ServerAccess access, Path journal) {
    return new SendRequest(access, Optional.of(journal), SendPlan.USUAL, false);
  }

  /**
   * Returns a request.
   *
   * @param size how many kB a transaction may have
   * @throws UsageException when that is less than one
   */
  public static SendRequest of(
      ServerAccess access, Optional<Path> journal, int size, boolean byId, boolean dry) {
    if (size < 1) {
      throw new UsageException("--transaction-size is at least 1");
    }
    return new SendRequest(access, journal, new SendPlan((long) size * KB, byId), dry);
  }
}
