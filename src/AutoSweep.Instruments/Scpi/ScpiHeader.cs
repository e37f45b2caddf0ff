using System.Text;
using System.Text.RegularExpressions;

namespace AutoSweep.Instruments.Scpi;

/// <summary>A command header in the manuals' notation, such as <c>[SENSe:]VOLTage:AC:RANGe[:UPPer]</c>.</summary>
/// <remarks>
/// Capitals are the short form; a mnemonic is sent in its short or its long form and in no other, in any letter case; what stands in
/// brackets may be left out (SCPI-1999, volume 1, chapter 6.2). <c>&lt;n&gt;</c> after a mnemonic stands for a numeric suffix.
/// A <c>?</c> at the end is a query; without one the header is a command.
/// </remarks>
public sealed partial class ScpiHeader
{
    private readonly Regex _pattern;

    /// <summary>A header.</summary>
    /// <param name="notation">The manual's notation.</param>
    /// <exception cref="ArgumentException">Not a header: empty, other characters, or brackets that do not pair.</exception>
    public ScpiHeader(string notation)
    {
        if (!Notation().IsMatch(notation) || notation.Count(letter => letter == '[') != notation.Count(letter => letter == ']'))
            throw new ArgumentException($"\"{notation}\" is no command header in the manuals' notation.", nameof(notation));
        Text = notation;
        _pattern = new(PatternOf(notation), RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
    }

    /// <summary>The notation.</summary>
    public string Text { get; }

    /// <summary>Whether a header as sent is this one.</summary>
    /// <param name="header">A full header from the root, with or without the leading colon.</param>
    public bool Matches(string header) => _pattern.IsMatch(header);

    /// <summary>The notation.</summary>
    public override string ToString() => Text;

    private static string PatternOf(string notation)
    {
        var pattern = new StringBuilder(notation.StartsWith('*') ? "^" : "^:?");
        foreach (Match token in Token().Matches(notation))
        {
            pattern.Append(token.Value switch
            {
                "[" => "(?:",
                "]" => ")?",
                "<n>" => "\\d*",
                "?" => "\\?",
                "*" => "\\*",
                ":" => ":",
                var mnemonic => Forms(mnemonic),
            });
        }

        return pattern.Append('$').ToString();
    }

    private static string Forms(string mnemonic)
    {
        var shortForm = new string([.. mnemonic.TakeWhile(letter => !char.IsAsciiLetterLower(letter))]);
        return shortForm.Length == mnemonic.Length ? mnemonic : $"(?:{shortForm}|{mnemonic})";
    }

    [GeneratedRegex(@"^\*?(?:[A-Z]+[a-z]*|\[|\]|:|<n>|\d)+\??$")]
    private static partial Regex Notation();

    [GeneratedRegex(@"[A-Z]+[a-z]*|\d+|<n>|[\[\]:?*]")]
    private static partial Regex Token();
}
