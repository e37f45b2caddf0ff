using Microsoft.AspNetCore.Components;

namespace AutoSweep.Worker.Reports.Pages;

/// <summary>The look of a record on screen and on paper: report.css, laid into the program.</summary>
internal static class ReportStyle
{
    /// <summary>The style sheet. It is the program's own text, nothing of the job is in it.</summary>
    public static MarkupString Sheet { get; } = new("<style>\n" + Read() + "</style>");

    private static string Read()
    {
        using var stream = typeof(ReportStyle).Assembly.GetManifestResourceStream("report.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
