package org.isopter.cli.command;

import org.isopter.cli.exchange.ListenOptions;
import org.isopter.task.exchange.ListenTask;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Receives messages with results over the network. */
@Command(
    name = "listen",
    description = {
      "Receives messages with results (HL7 v2, ORU^R01) over the network (MLLP) into a folder.",
      "A message is acknowledged (AA) when it is on the disk. What its values mean is for"
          + " 'isopter from-fhir FOLDER'.",
      "It ends when it is asked to (Ctrl-C, SIGTERM); the file of each message is printed."
    },
    footer = {
      "",
      "Examples:",
      "    isopter listen --port 2575 --output target/received",
      "    isopter listen --address 0.0.0.0 --port 2575 --key-store receiver.p12 \\",
      "      --key-store-password password --senders senders.pem --output target/received"
    })
public final class ListenCommand extends TaskCommand {

  @Mixin final ListenOptions options = new ListenOptions();

  public ListenCommand(Streams streams) {
    super(streams);
  }

  @Override
  void run(RunLog log) {
    new ListenTask(log, options.request()).run();
  }
}
