package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.courses.FilmLengths;
import org.lehrcase.bench.courses.KnownRoots;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.store.PositionTable.Position;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.TraitReport;
import org.lehrcase.core.license.License;

/** Answers what the start page shows. */
final class StateAnswer {
  private final Bench bench;
  private static final long MEASURE_MILLIS = 150;

  private final String version;
  private final FilmLengths lengths = new FilmLengths();

  StateAnswer(Bench bench, String version) {
    this.bench = bench;
    this.version = version;
  }

  JsonElement answer() throws VaultException, IOException {
    JsonObject state = new JsonObject();
    state.addProperty("version", version);
    state.addProperty("home", bench.home().toString());
    FilmLengths.Visit visit = lengths.visit(MEASURE_MILLIS);
    state.add("courses", courses(visit));
    state.addProperty("measuring", visit.isUnfinished());
    state.add("licenses", licenses());
    state.add("laptop", laptop());
    JsonObject waiting = new JsonObject();
    waiting.addProperty("cardMade", bench.opening().isCardWaiting());
    state.add("waiting", waiting);
    state.add("statements", teachers());
    state.add("last", last());
    return state;
  }

  private JsonArray courses(FilmLengths.Visit visit) throws VaultException, IOException {
    boolean shut = bench.opening().isShut();
    JsonArray courses = new JsonArray();
    List<KnownEdition> known = bench.courses().known();
    for (KnownEdition edition : known) {
      // the older editions only complete the folder of the newest
      if (known.stream().noneMatch(other -> other.replaces(edition))) {
        courses.add(new CourseAnswer(bench, edition, visit).answer(shut));
      }
    }
    return courses;
  }

  private JsonArray licenses() throws VaultException, IOException {
    JsonArray licenses = new JsonArray();
    for (License license : bench.opening().licenses()) {
      JsonObject one = new JsonObject();
      one.addProperty("id", license.id().hex());
      one.addProperty("name", license.terms().name());
      one.add("series", Json.tree(license.terms().series()));
      one.addProperty("places", license.terms().allowance().places());
      one.addProperty("state", bench.opening().state(license.id()).text());
      licenses.add(one);
    }
    return licenses;
  }

  private JsonObject laptop() throws VaultException, IOException {
    Optional<TraitReport> report = bench.laptop().report();
    JsonObject traits = new JsonObject();
    traits.addProperty("same", report.map(r -> r.same().size()).orElse(0));
    traits.addProperty("changed", report.map(r -> r.changed().size()).orElse(0));
    traits.addProperty("absent", report.map(r -> r.absent().size()).orElse(0));
    JsonObject laptop = new JsonObject();
    laptop.addProperty("recognised", !bench.laptop().secrets().isEmpty());
    laptop.add("traits", traits);
    return laptop;
  }

  private JsonArray teachers() throws VaultException, IOException {
    JsonArray teachers = new JsonArray();
    for (KnownRoots.Teacher teacher : bench.roots().teachers()) {
      JsonObject one = new JsonObject();
      one.addProperty("name", teacher.name());
      one.add("words", Json.tree(teacher.words()));
      one.addProperty("twin", teacher.twin());
      teachers.add(one);
    }
    return teachers;
  }

  private JsonElement last() throws IOException {
    Optional<Position> last = bench.store().positions().last();
    if (last.isEmpty()) {
      return JsonNull.INSTANCE;
    }
    JsonObject one = new JsonObject();
    one.addProperty("edition", last.get().edition().hex());
    one.addProperty("lesson", last.get().lesson().hex());
    one.addProperty("seconds", last.get().seconds());
    return one;
  }
}
