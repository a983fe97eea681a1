package org.isopter.task.exchange;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What is fetched from where.
 *
 * @param access the server
 * @param requests requests of FHIR below its address, such as {@code Observation?patient=1}
 * @param output the file of lines; empty for the data of the log
 */
public record FetchRequest(ServerAccess access, List<String> requests, Optional<Path> output) {

  public FetchRequest {
    requests = List.copyOf(requests);
  }
}
