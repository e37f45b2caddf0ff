using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Making;

/// <summary>Draws the coil and filter of one output so that it peaks near a capacitance with about a Q.</summary>
/// <remarks>
/// Near is enough: the truth is worked out afterwards from what was drawn. Values are rounded first, so that the file holds exactly
/// what the truth was worked out from.
/// </remarks>
internal sealed class NetworkRecipe(Random random)
{
    public (SourceDefinition Source, FilterDefinition Filter) Draw(Arrangement arrangement, double hertz, double farads, double q) =>
        arrangement switch
        {
            Arrangement.Series => Series(2 * Math.PI * hertz, farads, q),
            Arrangement.Shunt => Shunt(2 * Math.PI * hertz, farads, q),
            Arrangement.Coupled => Coupled(2 * Math.PI * hertz, farads, q),
            _ => Tapped(2 * Math.PI * hertz, farads, q),
        };

    /// <summary>An output without a filter: a coil that hardly feels the front end.</summary>
    public SourceDefinition Coil() => Source(Between(30, 150), Between(0.01, 0.06));

    private (SourceDefinition Source, FilterDefinition Filter) Series(double omega, double farads, double q)
    {
        // Resonance sees the whole inductance less what the loaded second winding takes away; the load adds a little resistance.
        var (reactance, coil, coupling, turns) = (1 / (omega * farads), Between(0.05, 0.2), Between(0.9, 0.97), Between(0.25, 0.5));
        var winding = reactance * (1 - coil) / omega;
        var secondary = winding * turns * turns;
        var load = Between(30, 60) * omega * secondary;
        var reflected = Math.Pow(omega * coupling, 2) * winding * secondary * load / ((load * load) + Math.Pow(omega * secondary, 2));
        var resistance = Math.Max((reactance / q) - reflected, 0.2 * reactance / q);
        return (Source(resistance * 0.4, reactance * coil / omega), new()
        {
            Arrangement = Arrangement.Series,
            Ohms = Round(resistance * 0.6),
            Henries = Round(winding),
            SecondaryHenries = Round(secondary),
            SecondaryOhms = Round(0.02 * omega * secondary),
            CouplingFactor = Round(coupling),
            LoadOhms = Round(load),
        });
    }

    private (SourceDefinition Source, FilterDefinition Filter) Shunt(double omega, double farads, double q)
    {
        var (reactance, coil) = (q * q / ((1 + (q * q)) * omega * farads), Between(0.2, 0.5));
        var resistance = reactance / q;
        return (Source(resistance * 0.5, reactance * coil / omega), new()
        {
            Arrangement = Arrangement.Shunt,
            Ohms = Round(resistance * 0.5),
            Henries = Round(reactance * (1 - coil) / omega),
        });
    }

    private (SourceDefinition Source, FilterDefinition Filter) Coupled(double omega, double farads, double q)
    {
        // Seen from the capacitor: the winding's leakage (1 - k^2) of its inductance, the coil's resistance stepped up, in series.
        var (reactance, coupling) = (q * q / ((1 + (q * q)) * omega * farads), Between(0.4, 0.6));
        var winding = reactance / (omega * (1 - (coupling * coupling)));
        var coil = winding * Between(0.15, 0.4);
        var resistance = reactance / q;
        return (Source(resistance * 0.4 * coil / (winding * coupling * coupling), coil), new()
        {
            Arrangement = Arrangement.Coupled,
            Ohms = Round(resistance * 0.5),
            Henries = Round(winding),
            CouplingFactor = Round(coupling),
            LoadOhms = Round(reactance * q * Between(10, 20)),
        });
    }

    private (SourceDefinition Source, FilterDefinition Filter) Tapped(double omega, double farads, double q)
    {
        var (reactance, coil) = (1 / (omega * farads), Between(0.5, 0.75));
        var resistance = reactance / q;
        return (Source(resistance * 0.75, reactance * coil / omega), new()
        {
            Arrangement = Arrangement.Tapped,
            Ohms = Round(resistance * 0.25),
            Henries = Round(reactance * (1 - coil) / omega),
        });
    }

    /// <summary>The emf is chosen later, so that the level at the peak comes out as wanted.</summary>
    private static SourceDefinition Source(double ohms, double henries) =>
        new() { EmfMillivolts = 1, Ohms = Round(ohms), Henries = Round(henries) };

    private double Between(double least, double most) => least + ((most - least) * random.NextDouble());

    /// <summary>Five figures: finer than anyone could know of a coil, and short in the file.</summary>
    public static double Round(double value)
    {
        if (value == 0) return 0;
        var digits = 5 - (int)Math.Ceiling(Math.Log10(Math.Abs(value)));
        var scale = Math.Pow(10, Math.Abs(digits));
        return digits >= 0 ? Math.Round(value * scale) / scale : Math.Round(value / scale) * scale;
    }
}
