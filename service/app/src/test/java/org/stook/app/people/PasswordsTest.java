package org.stook.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PasswordsTest {
    private final Passwords passwords = new Passwords();

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            eleven char             | at least 12 characters
            aaaaaaaaaaaaaaaaaaaa    | too few different
            the ada lovelace engine | must not contain the name
            123456789 123456789 123456789 123456789 123456789 123456789 123456789 123 | at most 72 bytes
            """)
    void aWeakOrOverlongPasswordIsRefusedWithTheReason(String password, String why) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> passwords.hash("Ada", password))
                .withMessageContaining(why);
    }

    /** Test vector of the crypt_blowfish suite (Solar Designer, public domain; from memory). */
    @Test
    void bcryptIsTheOneThatOthersMean() {
        assertThat(passwords
                        .encoder()
                        .matches("U*U", "{bcrypt}$2a$05$CCCCCCCCCCCCCCCCCCCCC.E5YPO9kmyuRGyh0XouQYb4YMJKvyOeW"))
                .isTrue();
        String hash = passwords.hash("Ada", "four slow brown snails");
        assertThat(hash).startsWith("{bcrypt}$2a$11$");
        assertThat(passwords.encoder().matches("four slow brown snails", hash)).isTrue();
        assertThat(passwords.encoder().matches("four slow brown snail", hash)).isFalse();
    }

    @Test
    void codesAreReadableDifferAndMatchHoweverTheyAreTyped() {
        Set<String> codes = new HashSet<>();
        for (int i = 0; i < 200; i++) codes.add(OneTimeCode.fresh());
        assertThat(codes).hasSize(200).allMatch(code -> code.matches("([2-9A-HJ-NP-Z]{4}-){4}[2-9A-HJ-NP-Z]{4}"));
        String code = codes.iterator().next();
        String hash = OneTimeCode.sha256(code);
        assertThat(OneTimeCode.matches(
                        " " + code.toLowerCase(java.util.Locale.ROOT).replace("-", " "), hash))
                .isTrue();
        assertThat(OneTimeCode.matches(code.substring(1), hash)).isFalse();
    }
}
