namespace AutoSweep.Pages.Tests.Support;

/// <summary>A size of paper (ISO 216 for A4; ANSI/ASME Y14.1 for Letter), in millimetres.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
public sealed record Paper(string Name, double Width, double Height)
{
    public static Paper A4 { get; } = new("A4", 210, 297);

    public static Paper Letter { get; } = new("Letter", 215.9, 279.4);

    /// <summary>The margin to the left and right of the record's text: what its style sheet says.</summary>
    public const double SideMargin = 12;

    /// <summary>Millimetres of a CSS pixel: 96 to the inch (CSS Values 4, 6.2).</summary>
    public const double PixelMillimetres = 25.4 / 96;

    /// <summary>Millimetres of a point of a PDF: 72 to the inch (ISO 32000-1, 8.3.2.3).</summary>
    public const double PointMillimetres = 25.4 / 72;

    public static Paper Named(string name) => name == A4.Name ? A4 : Letter;
}
