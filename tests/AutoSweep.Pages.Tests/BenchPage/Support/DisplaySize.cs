namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>A screen that stands in a workshop, in CSS pixels.</summary>
/// <param name="Name">Its name, for the pictures' files.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
internal sealed record DisplaySize(string Name, int Width, int Height)
{
    /// <summary>A small laptop, or a tablet that lies on its side.</summary>
    public static DisplaySize Landscape { get; } = new("1280x800", 1280, 800);

    /// <summary>A tablet that stands upright.</summary>
    public static DisplaySize Portrait { get; } = new("800x1280", 800, 1280);

    /// <summary>A phone.</summary>
    public static DisplaySize Phone { get; } = new("390x844", 390, 844);

    /// <summary>All three.</summary>
    public static IReadOnlyList<DisplaySize> All { get; } = [Landscape, Portrait, Phone];
}
