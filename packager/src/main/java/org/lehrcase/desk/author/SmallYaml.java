package org.lehrcase.desk.author;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.table.Problem;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingEndEvent;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceEndEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * The corner of YAML that course folders use: one flat mapping of words to a text or a list of
 * texts. Anchors, aliases, nesting and second documents are refused, so that a small file cannot
 * grow large.
 */
final class SmallYaml {
  /** More characters than this are refused. */
  static final int MAX_CHARACTERS = 64 << 10;

  private final Map<String, List<String>> values = new HashMap<>();
  private final List<Problem> problems = new ArrayList<>();
  private Optional<String> key = Optional.empty();
  private int depth;
  private int documents;

  private SmallYaml() {}

  /** Reads a file; always gives what could be read before the first problem. */
  static SmallYaml parse(String text) {
    var yaml = new SmallYaml();
    var settings = LoadSettings.builder().setCodePointLimit(MAX_CHARACTERS).build();
    try {
      for (var event : new Parse(settings).parseString(text)) {
        if (!yaml.take(event)) {
          break;
        }
      }
    } catch (MarkedYamlEngineException e) {
      yaml.problems.add(new Problem(line(e.getProblemMark()), "not understood: " + e.getProblem()));
    } catch (YamlEngineException e) {
      yaml.problems.add(Problem.ofFile("not understood: " + e.getMessage()));
    }
    return yaml;
  }

  private boolean take(Event event) {
    if (event instanceof AliasEvent
        || event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      return refuse(event, "anchors and aliases are not used here");
    }
    if (event instanceof DocumentStartEvent && ++documents > 1) {
      return refuse(event, "there must be only one document in the file");
    }
    return event instanceof ScalarEvent scalar ? takeScalar(scalar) : takeBracket(event);
  }

  /** Follows where a mapping or a list begins and ends. */
  private boolean takeBracket(Event event) {
    if (event instanceof MappingStartEvent) {
      return ++depth == 1 || refuse(event, "a value must be a text or a list of texts");
    }
    if (event instanceof SequenceStartEvent) {
      return key.isPresent() && ++depth == 2
          || refuse(event, "a value must be a text or a list of texts");
    }
    if (event instanceof SequenceEndEvent) {
      depth--;
      key = Optional.empty();
    }
    if (event instanceof MappingEndEvent) {
      depth--;
    }
    return true;
  }

  private boolean takeScalar(ScalarEvent scalar) {
    if (depth == 0) {
      return refuse(scalar, "each line must be a word, a colon and a value");
    }
    if (key.isEmpty()) {
      key = Optional.of(scalar.getValue());
      return values.putIfAbsent(scalar.getValue(), new ArrayList<>()) == null
          || refuse(scalar, "'" + scalar.getValue() + "' stands twice");
    }
    values.getOrDefault(key.get(), new ArrayList<>()).add(scalar.getValue());
    if (depth == 1) {
      key = Optional.empty();
    }
    return true;
  }

  private boolean refuse(Event event, String message) {
    problems.add(new Problem(line(event.getStartMark()), message));
    return false;
  }

  private static int line(Optional<Mark> mark) {
    return mark.map(m -> m.getLine() + 1).orElse(0);
  }

  /** Returns the words that stand before a colon. */
  List<String> keys() {
    return values.keySet().stream().sorted().toList();
  }

  /** Returns a text; several values become one line each. */
  Optional<String> text(String name) {
    return Optional.ofNullable(values.get(name)).map(v -> String.join("\n", v).strip());
  }

  /** Returns a list; a single text is a list of one, nothing is an empty list. */
  List<String> list(String name) {
    return List.copyOf(values.getOrDefault(name, List.of()));
  }

  List<Problem> problems() {
    return List.copyOf(problems);
  }
}
