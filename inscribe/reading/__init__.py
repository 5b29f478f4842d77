"""What an inscription says: tokens, kana, romanised reading, register, signature, doubts."""
