package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.sales.SalesException;
import picocli.CommandLine;

class FailuresTest {
  static Stream<Arguments> failures() {
    return Stream.of(
        Arguments.of(new DeskHomeException.InUse("busy"), ExitCode.IN_USE, "busy"),
        Arguments.of(new DeskHomeException.WrongPassphrase("no"), ExitCode.PASSPHRASE, "no"),
        Arguments.of(new DeskHomeException.Unusable("short"), ExitCode.PASSPHRASE, "short"),
        Arguments.of(new DeskHomeException.NotAHome("none"), ExitCode.REFUSED, "none"),
        Arguments.of(new RefusedException(Refusal.PLACES_IN_USE, "full"), ExitCode.REFUSED, "full"),
        Arguments.of(new VaultException.Tampered("odd"), ExitCode.REFUSED, "odd"),
        Arguments.of(new SalesException("book"), ExitCode.FILES, "book"),
        Arguments.of(new NoSuchFileException("/a"), ExitCode.FILES, "nothing at /a"),
        Arguments.of(new FileAlreadyExistsException("/a"), ExitCode.FILES, "left alone"),
        Arguments.of(new AccessDeniedException("/a"), ExitCode.FILES, "may not be read"),
        Arguments.of(
            new FileSystemException("/a", null, "Read-only file system"),
            ExitCode.FILES,
            "may not be read or written"),
        Arguments.of(
            new FileSystemException("/a", null, "No space left on device"),
            ExitCode.FILES,
            "/a: No space left on device."),
        Arguments.of(new IOException(), ExitCode.FILES, "IOException"),
        Arguments.of(
            new PackException(PackException.Reason.NO_SPACE, "room"), ExitCode.FILES, "room"),
        Arguments.of(
            new PackException(PackException.Reason.COURSE_HAS_ERRORS, "course"),
            ExitCode.COURSE_HAS_ERRORS,
            "course"),
        Arguments.of(
            new PackException(PackException.Reason.TARGET_TAKEN, "taken"),
            ExitCode.REFUSED,
            "taken"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("failures")
  void eachFailureHasItsCodeAndPlainWords(Exception failure, int code, String words) {
    StringWriter err = new StringWriter();
    assertThat(handle(failure, err)).isEqualTo(code);
    assertThat(err.toString()).startsWith("error: ").contains(words).doesNotContain("\tat ");
  }

  @Test
  void aFaultOfTheProgramShowsWhereItIs() {
    StringWriter err = new StringWriter();
    assertThat(handle(new IllegalStateException("oops"), err)).isEqualTo(ExitCode.FAULT);
    assertThat(err.toString()).contains("please report", "oops", "\tat ");
  }

  private static int handle(Exception failure, StringWriter err) {
    CommandLine line =
        DeskCommands.of(
            new Surroundings(
                TestDesk.CLOCK,
                new java.security.SecureRandom(),
                label -> new char[0],
                TestDesk.QUICK));
    line.setErr(new PrintWriter(err));
    return new Failures().handleExecutionException(failure, line, line.parseArgs());
  }
}
