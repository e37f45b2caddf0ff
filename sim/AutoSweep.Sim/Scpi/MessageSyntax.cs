namespace AutoSweep.Sim.Scpi;

/// <summary>Takes a program message apart (IEEE 488.2, 7; SCPI-1999 volume 1, 6.2).</summary>
internal static class MessageSyntax
{
    /// <summary>A mnemonic's greatest length (IEEE 488.2, 7.6.1.4.1).</summary>
    private const int LongestMnemonic = 12;

    /// <exception cref="ScpiErrorException">A quote or bracket stays open.</exception>
    public static IEnumerable<string> Units(string message) => string.IsNullOrWhiteSpace(message) ? [] : Split(message, ';');

    public static MessageUnit Unit(string text)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0) throw new ScpiErrorException(ScpiError.Syntax);
        var end = HeaderEnd(trimmed);
        var header = trimmed[..end];
        if (end < trimmed.Length && !char.IsWhiteSpace(trimmed[end])) throw new ScpiErrorException(Unexpected(trimmed[end]));
        CheckHeader(header);
        return new(
            header.TrimStart(':').ToUpperInvariant(), header[0] is ':' or '*',
            end == trimmed.Length ? [] : [.. Split(trimmed[end..], ',').Select(parameter => parameter.Trim())]);
    }

    private static int HeaderEnd(string text)
    {
        var end = 0;
        while (end < text.Length && (char.IsAsciiLetterOrDigit(text[end]) || text[end] is ':' or '*' or '_')) end++;
        return end < text.Length && text[end] == '?' ? end + 1 : end;
    }

    private static ScpiError Unexpected(char found) =>
        char.IsAscii(found) && !char.IsControl(found) && "#$%&!^~`{}[]\\|".IndexOf(found, StringComparison.Ordinal) < 0
            ? ScpiError.HeaderSeparator
            : ScpiError.InvalidCharacter;

    private static void CheckHeader(string header)
    {
        var bare = header.TrimEnd('?');
        var common = bare.StartsWith('*');
        var mnemonics = (common ? bare[1..] : bare.StartsWith(':') ? bare[1..] : bare).Split(':');
        if (mnemonics.Any(word => word.Length == 0 || !char.IsAsciiLetter(word[0]) || word.Contains('*', StringComparison.Ordinal)))
            throw new ScpiErrorException(ScpiError.Syntax);
        if (mnemonics.Any(word => word.Length > LongestMnemonic)) throw new ScpiErrorException(ScpiError.MnemonicTooLong);
    }

    private static IEnumerable<string> Split(string text, char separator)
    {
        var (start, depth, quote) = (0, 0, '\0');
        for (var i = 0; i < text.Length; i++)
        {
            if (quote != '\0') quote = text[i] == quote ? '\0' : quote;
            else if (text[i] is '"' or '\'') quote = text[i];
            else if (text[i] is '(' or ')') depth += text[i] == '(' ? 1 : -1;
            else if (text[i] == separator && depth == 0)
            {
                yield return text[start..i];
                start = i + 1;
            }
        }

        if (quote != '\0') throw new ScpiErrorException(ScpiError.InvalidString);
        if (depth != 0) throw new ScpiErrorException(ScpiError.InvalidExpression);
        yield return text[start..];
    }
}
