using System.Globalization;

namespace AutoSweep.Instruments.Scpi;

/// <summary>An entry of an instrument's error queue (SCPI-1999, volume 2, chapter 21.8).</summary>
/// <param name="Number">Negative numbers are the standard's, positive ones the instrument's own; 0 is no error.</param>
/// <param name="Text">The text as the instrument gave it, or the standard's where it gave none.</param>
public sealed record ScpiError(int Number, string Text)
{
    /// <summary>Whether the instrument did not understand the command: class -1xx, command errors.</summary>
    public bool IsCommandError => Number is <= -100 and > -200;

    /// <summary>Whether a query was interrupted or its answer not taken, class -4xx, query errors: about the exchange, and no command's fault.</summary>
    public bool IsQueryError => Number is <= -400 and > -500;

    /// <summary>Reads a reply to <c>SYST:ERR?</c>, such as <c>-113,"Undefined header"</c> or <c>+0,"No error"</c>.</summary>
    /// <returns>Null when it is none.</returns>
    public static ScpiError? TryParse(string reply)
    {
        var comma = reply.IndexOf(',', StringComparison.Ordinal);
        var number = comma < 0 ? reply : reply[..comma];
        if (!int.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
            CultureInfo.InvariantCulture, out var parsed))
            return null;
        var text = comma < 0 ? "" : Unquoted(reply[(comma + 1)..].Trim());
        return new(parsed, text.Length > 0 ? text : StandardErrors.TextOf(parsed) ?? "");
    }

    /// <summary>The number and the text: <c>-113 "Undefined header"</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Number} \"{Text}\"");

    // A quote inside a string is doubled (IEEE 488.2, 8.7.8).
    private static string Unquoted(string text) => text.Length >= 2 && text[0] == text[^1] && text[0] is '"' or '\''
        ? text[1..^1].Replace(new string(text[0], 2), text[..1], StringComparison.Ordinal)
        : text;
}
