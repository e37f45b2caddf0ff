using System.Diagnostics;
using System.Globalization;
using System.Text;
using AutoSweep.Sim.Network;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>Runs circuits through ngspice's AC analysis.</summary>
internal static class Ngspice
{
    /// <summary>The level of a terminal for an emf of 1 V.</summary>
    public static double Level(Circuit circuit, int terminal, double hertz)
    {
        var start = new ProcessStartInfo("ngspice")
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
        };
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, Netlist(circuit, terminal, hertz));
            start.ArgumentList.Add("-b");
            start.ArgumentList.Add("-n");
            start.ArgumentList.Add(file);
            using var process = Process.Start(start)!;
            process.StandardInput.Close();
            var errors = process.StandardError.ReadToEndAsync();
            var line = process.StandardOutput.ReadToEnd().Split('\n').First(text => text.StartsWith("level = ", StringComparison.Ordinal));
            process.WaitForExit();
            return double.Parse(line["level = ".Length..], NumberStyles.Float, CultureInfo.InvariantCulture);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Netlist(Circuit circuit, int terminal, double hertz)
    {
        var text = new StringBuilder("* one output of a simulated generator\n");
        text.AppendLine(CultureInfo.InvariantCulture, $"V1 {circuit.Driven} 0 DC 0 AC 1");
        foreach (var (element, index) in circuit.Admittances.Select((element, index) => (element, index)))
            Append(text, element, index, hertz);
        foreach (var (coil, index) in circuit.Inductors.Select((coil, index) => (coil, index)))
            text.AppendLine(CultureInfo.InvariantCulture, $"L{index} {coil.From} {coil.To} {coil.Henries:R}");
        foreach (var (pair, index) in circuit.Couplings.Select((pair, index) => (pair, index)))
            text.AppendLine(CultureInfo.InvariantCulture, $"K{index} L{pair.First} L{pair.Second} {pair.Factor:R}");
        text.AppendLine(CultureInfo.InvariantCulture,
            $".control\nset numdgt=15\nac lin 1 {hertz:R} {hertz:R}\nlet level = mag(v({terminal}))\nprint level\nquit\n.endc\n.end");
        return text.ToString();
    }

    private static void Append(StringBuilder text, Element element, int index, double hertz)
    {
        if (element.Kind == ElementKind.Resistor)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"R{index} {element.From} {element.To} {element.Value:R}");
            return;
        }

        text.AppendLine(CultureInfo.InvariantCulture, $"C{index} {element.From} {element.To} {element.Value:R}");
        if (element.LossTangent > 0)
            text.AppendLine(CultureInfo.InvariantCulture,
                $"RC{index} {element.From} {element.To} {1 / (2 * Math.PI * hertz * element.Value * element.LossTangent):R}");
    }
}
