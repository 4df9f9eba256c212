package org.lehrcase.core.license;

import org.lehrcase.core.VaultException;

/** What a statement lets a key sign. */
public enum SignerRole {
  /** Front pages, keys files, letters, corrections and licenses. */
  DESK(0),
  /** Licenses only. */
  ISSUE(1);

  private final int code;

  SignerRole(int code) {
    this.code = code;
  }

  int code() {
    return code;
  }

  static SignerRole ofCode(int code) throws VaultException.Malformed {
    for (SignerRole role : values()) {
      if (role.code == code) {
        return role;
      }
    }
    throw new VaultException.Malformed("a statement names an unknown role: " + code);
  }
}
