using System.Globalization;
using AutoSweep.Core.Diagnosis;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>A job's findings on the terminal: what and where first, loud; then the evidence and how to make sure.</summary>
internal static class DiagnosisText
{
    public static void Write(IAnsiConsole console, IReadOnlyList<Finding> findings)
    {
        if (findings.Count == 0)
            console.WriteLine("Nothing found: no reading of this job speaks for a fault.");
        while (findings.Count > 0)
        {
            // Forty old capacitors are made sure of in one and the same way: it is said once, under the last of them.
            List<Finding> alike = [.. findings.TakeWhile(one => one.Fault == findings[0].Fault && one.Confirm == findings[0].Confirm)];
            foreach (var finding in alike)
                Write(console, finding);
            Indented(console, "Make sure: " + alike[0].Confirm);
            findings = [.. findings.Skip(alike.Count)];
        }
    }

    private static void Write(IAnsiConsole console, Finding finding)
    {
        var place = finding.Output is { } output ? $"output {output,3}" : "generator ";
        console.MarkupInterpolated(CultureInfo.InvariantCulture, $"[bold]{place}[/]  [bold red]{FaultWords.Name(finding.Fault),-19}[/] {Size(finding)}");
        console.WriteLine();
        Indented(console, finding.Evidence);
    }

    private static void Indented(IAnsiConsole console, string text) => console.Write(new Padder(new Text(text), new Padding(4, 0, 0, 0)));

    private static string Size(Finding finding) => finding switch
    {
        { Size: { } size, SizeUncertainty: { } sd } => string.Create(CultureInfo.InvariantCulture, $"{size:0.00} ± {sd:0.00} {finding.Unit}"),
        { Size: { } size } => string.Create(CultureInfo.InvariantCulture, $"{size:0.00} {finding.Unit}"),
        _ => "",
    };
}
