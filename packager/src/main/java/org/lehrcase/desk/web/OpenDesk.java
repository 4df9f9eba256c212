package org.lehrcase.desk.web;

import com.google.gson.JsonElement;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.Inbox;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.sales.SalesBook;

/** A desk that a page works with: its home, and its keys once the passphrase was given. */
final class OpenDesk implements AutoCloseable {
  private final DeskHome home;
  private final SecureRandom random;
  private final Argon2id.Cost cost;
  private final AtomicReference<@Nullable DeskKeys> keys = new AtomicReference<>();

  /** Answers a question for which the keys are open, with the refusals of the desk. */
  @FunctionalInterface
  interface Work {
    JsonElement answer(DeskKeys keys)
        throws Trouble, VaultException, IOException, RefusedException, DeskHomeException;
  }

  /** The same for one request. */
  @FunctionalInterface
  interface WorkOn {
    JsonElement answer(Ask ask, DeskKeys keys)
        throws Trouble, VaultException, IOException, RefusedException, DeskHomeException;
  }

  /** The same for one request about one id. */
  @FunctionalInterface
  interface WorkOnEach {
    JsonElement answer(String id, Ask ask, DeskKeys keys)
        throws Trouble, VaultException, IOException, RefusedException, DeskHomeException;
  }

  OpenDesk(DeskHome home, SecureRandom random, Argon2id.Cost cost) {
    this.home = home;
    this.random = random;
    this.cost = cost;
  }

  DeskHome home() {
    return home;
  }

  SalesBook book() {
    return home.book();
  }

  SecureRandom random() {
    return random;
  }

  Argon2id.Cost cost() {
    return cost;
  }

  String shop() {
    return home.statement().terms().name();
  }

  Licensing licensing(DeskKeys open) {
    return new Licensing(book(), open, home.statement(), random);
  }

  Inbox inbox(DeskKeys open) {
    return new Inbox(book(), new Answering(book(), open, random));
  }

  boolean isUnlocked() {
    return keys.get() != null;
  }

  Optional<DeskKeys> keysIfOpen() {
    return Optional.ofNullable(keys.get());
  }

  /** Opens the keys; a second time changes nothing. */
  synchronized void unlock(Passphrase passphrase) throws IOException, DeskHomeException {
    if (keys.get() == null) {
      keys.set(home.unlock(passphrase));
    }
  }

  /** Takes a passphrase out of a body and zeroes the body. */
  static Passphrase passphrase(byte[] utf8) throws Trouble {
    try {
      CharBuffer text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(utf8));
      char[] typed = new char[text.remaining()];
      text.get(typed);
      Arrays.fill(text.array(), '\0');
      return Passphrase.taking(typed);
    } catch (CharacterCodingException e) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no text.", "Load the page again.");
    } finally {
      Arrays.fill(utf8, (byte) 0);
    }
  }

  JsonApi.Action keyed(WorkOn work) {
    return ask -> inWords(open -> work.answer(ask, open));
  }

  JsonApi.ActionOn keyedEach(WorkOnEach work) {
    return (id, ask) -> inWords(open -> work.answer(id, ask, open));
  }

  private JsonElement inWords(Work work) throws Trouble, VaultException, IOException {
    DeskKeys open = keys.get();
    if (open == null) {
      throw new Trouble(
          TroubleCode.LOCKED, "The desk is still locked.", "Type the passphrase of this desk.");
    }
    try {
      return work.answer(open);
    } catch (RefusedException e) {
      throw refused(e);
    } catch (DeskHomeException e) {
      throw refused(e);
    }
  }

  static Trouble refused(Exception why) {
    Trouble trouble = new Trouble(TroubleCode.REFUSED, String.valueOf(why.getMessage()), "", "");
    trouble.initCause(why);
    return trouble;
  }

  @Override
  public void close() {
    home.book().unseal();
    DeskKeys open = keys.getAndSet(null);
    if (open != null) {
      open.close();
    }
  }
}
