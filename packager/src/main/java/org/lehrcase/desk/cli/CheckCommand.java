package org.lehrcase.desk.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.CourseReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks a course folder. */
@Command(
    name = "check",
    description = "Lists everything wrong or doubtful in a course folder, with what to do.",
    mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "COURSE", description = "The folder of one series.")
  private Path course;

  @Override
  public Integer call() throws Exception {
    CourseReport report = CourseCheck.run(course);
    report.render(spec.commandLine().getOut());
    return report.packable() ? ExitCode.DONE : ExitCode.COURSE_HAS_ERRORS;
  }
}
