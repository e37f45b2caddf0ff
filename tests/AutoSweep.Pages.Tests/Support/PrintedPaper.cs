namespace AutoSweep.Pages.Tests.Support;

/// <summary>One printed sheet.</summary>
/// <param name="Width">Its width in millimetres.</param>
/// <param name="Height">Its height in millimetres.</param>
/// <param name="Words">The words on it, in reading order.</param>
internal sealed record PrintedPaper(double Width, double Height, IReadOnlyList<PrintedWord> Words)
{
    /// <summary>All words, separated by blanks.</summary>
    public string Text => string.Join(' ', Words.Select(word => word.Text));
}
