package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;
import org.lehrcase.core.VaultException;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.sticks.StickException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Says in plain words why a command failed, and chooses its exit code. */
final class Failures implements IExecutionExceptionHandler {
  @Override
  public int handleExecutionException(Exception failure, CommandLine command, ParseResult parsed) {
    PrintWriter err = command.getErr();
    int code = code(failure);
    if (code == ExitCode.FAULT) {
      err.println("error: The program has a fault; please report the lines below.");
      failure.printStackTrace(err);
    } else {
      err.println("error: " + message(failure));
    }
    err.flush();
    return code;
  }

  private static int code(Exception failure) {
    if (failure instanceof DeskHomeException.InUse) {
      return ExitCode.IN_USE;
    }
    if (failure instanceof DeskHomeException.WrongPassphrase
        || failure instanceof DeskHomeException.Unusable) {
      return ExitCode.PASSPHRASE;
    }
    if (failure instanceof RefusedException
        || failure instanceof DeskHomeException
        || failure instanceof VaultException) {
      return ExitCode.REFUSED;
    }
    if (failure instanceof PackException e) {
      return code(e.reason());
    }
    if (failure instanceof StickException e) {
      return e.reason() == StickException.Reason.NO_STICK ? ExitCode.FILES : ExitCode.REFUSED;
    }
    return failure instanceof IOException ? ExitCode.FILES : ExitCode.FAULT;
  }

  private static int code(PackException.Reason reason) {
    return switch (reason) {
      case COURSE_HAS_ERRORS -> ExitCode.COURSE_HAS_ERRORS;
      case NO_SPACE -> ExitCode.FILES;
      case TARGET_TAKEN, CHANGED_MEANWHILE, NO_LIGHT_FILM -> ExitCode.REFUSED;
    };
  }

  private static String message(Exception failure) {
    if (failure instanceof FileSystemException e) {
      return files(e);
    }
    String message = failure.getMessage();
    return message == null ? failure.getClass().getSimpleName() : message;
  }

  private static String files(FileSystemException e) {
    if (e instanceof NoSuchFileException) {
      return "There is nothing at " + e.getFile() + ". Nothing was changed.";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "There is something at " + e.getFile() + " already. It was left alone; name another.";
    }
    String why = e.getReason() == null ? "" : e.getReason();
    if (e instanceof AccessDeniedException || why.toLowerCase(Locale.ROOT).contains("read-only")) {
      return e.getFile() + " may not be read or written. Choose a place where you may write.";
    }
    return e.getFile() + ": " + (why.isEmpty() ? "cannot be used" : why) + ".";
  }
}
