using System.Numerics;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Network;

/// <summary>The network between a pickup coil's emf and the terminal, with the front end's input as its load.</summary>
internal sealed class OutputNetwork(OutputDefinition output, FrontEndDefinition frontEnd)
{
    /// <summary>Terminal voltage for an emf of 1 V.</summary>
    /// <param name="hertz">The emf's frequency.</param>
    /// <param name="farads">What is clipped or fitted in the capacitor's place; no matter where the output has none.</param>
    /// <param name="lossTangent">Its loss tangent.</param>
    public Complex Transfer(double hertz, double farads, double lossTangent)
    {
        var circuit = Build(farads, lossTangent, out var terminal);
        return circuit.Voltage(terminal, hertz);
    }

    /// <summary>The response over capacitance at one frequency.</summary>
    public BilinearResponse Response(double hertz, double lossTangent) =>
        new(farads => Transfer(hertz, farads, lossTangent), scale: 1e-7);

    /// <summary>The network as elements, for the solver and for an outside simulator's netlist.</summary>
    public Circuit Build(double farads, double lossTangent, out int terminal)
    {
        var circuit = new Circuit();
        terminal = output.Filter is { } filter ? Filtered(circuit, filter, farads, lossTangent) : Plain(circuit);
        circuit.Resistor(terminal, 0, frontEnd.InputOhms);
        circuit.Capacitor(terminal, 0, frontEnd.InputPicofarads * 1e-12);
        return circuit;
    }

    private int Filtered(Circuit circuit, FilterDefinition filter, double farads, double lossTangent) => filter.Arrangement switch
    {
        Arrangement.Shunt => Shunt(circuit, filter, farads, lossTangent),
        Arrangement.Series => Series(circuit, filter, farads, lossTangent),
        Arrangement.Coupled => Coupled(circuit, filter, farads, lossTangent),
        Arrangement.Tapped => Tapped(circuit, filter, farads, lossTangent),
        _ => throw new InvalidOperationException($"No network for {filter.Arrangement}."),
    };

    private int Plain(Circuit circuit) => Coil(circuit, circuit.Emf(), output.Source.Ohms, output.Source.Henries);

    private int Shunt(Circuit circuit, FilterDefinition filter, double farads, double lossTangent)
    {
        var terminal = Coil(circuit, Plain(circuit), filter.Ohms, filter.Henries);
        circuit.Capacitor(terminal, 0, farads, lossTangent);
        return terminal;
    }

    private int Series(Circuit circuit, FilterDefinition filter, double farads, double lossTangent)
    {
        var (before, after, winding, inside, terminal) = (Plain(circuit), circuit.Node(), circuit.Node(), circuit.Node(), circuit.Node());
        circuit.Capacitor(before, after, farads, lossTangent);
        circuit.Resistor(after, winding, filter.Ohms);
        circuit.Couple(
            circuit.Inductor(winding, 0, filter.Henries), circuit.Inductor(inside, 0, filter.SecondaryHenries), filter.CouplingFactor);
        circuit.Resistor(inside, terminal, filter.SecondaryOhms);
        circuit.Resistor(terminal, 0, filter.LoadOhms);
        return terminal;
    }

    private int Coupled(Circuit circuit, FilterDefinition filter, double farads, double lossTangent)
    {
        var (emf, primary, inside, terminal) = (circuit.Emf(), circuit.Node(), circuit.Node(), circuit.Node());
        circuit.Resistor(emf, primary, output.Source.Ohms);
        circuit.Couple(
            circuit.Inductor(primary, 0, output.Source.Henries), circuit.Inductor(inside, 0, filter.Henries), filter.CouplingFactor);
        circuit.Resistor(inside, terminal, filter.Ohms);
        circuit.Resistor(terminal, 0, filter.LoadOhms);
        circuit.Capacitor(terminal, 0, farads, lossTangent);
        return terminal;
    }

    private int Tapped(Circuit circuit, FilterDefinition filter, double farads, double lossTangent)
    {
        var terminal = Plain(circuit);
        var end = Coil(circuit, terminal, filter.Ohms, filter.Henries);
        circuit.Capacitor(end, 0, farads, lossTangent);
        return terminal;
    }

    private static int Coil(Circuit circuit, int from, double ohms, double henries)
    {
        var (inside, to) = (circuit.Node(), circuit.Node());
        circuit.Resistor(from, inside, ohms);
        circuit.Inductor(inside, to, henries);
        return to;
    }
}
