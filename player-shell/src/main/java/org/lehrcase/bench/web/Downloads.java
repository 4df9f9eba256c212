package org.lehrcase.bench.web;

import java.io.IOException;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;

/** Answers with a paper that the student may keep: the one door by which clear text leaves. */
@FunctionalInterface
interface Downloads {
  /**
   * Answers with the paper named by the last two steps of an address.
   *
   * @throws Trouble if the teacher does not allow it, or there is no such paper
   */
  void answer(String editionAndAsset, Response response, Callback callback)
      throws Trouble, VaultException, IOException;
}
