using System.Numerics;

namespace AutoSweep.Sim.Network;

/// <summary>A small linear network, solved at one frequency by modified nodal analysis.</summary>
/// <remarks>Node 0 is ground. Unknowns are the node voltages, then one current for the emf and for every inductor.</remarks>
internal sealed class Circuit
{
    private readonly List<Element> admittances = [];
    private readonly List<Inductor> inductors = [];
    private readonly List<Coupling> couplings = [];
    private int nodes;

    /// <summary>The node that an emf of 1 V drives.</summary>
    public int Driven { get; private set; }

    /// <summary>The elements in the order they were added, for a netlist.</summary>
    public IReadOnlyList<Element> Admittances => admittances;

    public IReadOnlyList<Inductor> Inductors => inductors;

    public IReadOnlyList<Coupling> Couplings => couplings;

    public int Node() => ++nodes;

    public int Emf() => Driven = Node();

    public void Resistor(int from, int to, double ohms) => admittances.Add(new(ElementKind.Resistor, from, to, ohms, 0));

    /// <summary>A capacitor of a loss tangent that is the same at every frequency.</summary>
    public void Capacitor(int from, int to, double farads, double lossTangent = 0) =>
        admittances.Add(new(ElementKind.Capacitor, from, to, farads, lossTangent));

    public int Inductor(int from, int to, double henries)
    {
        inductors.Add(new(from, to, henries));
        return inductors.Count - 1;
    }

    public void Couple(int first, int second, double factor) => couplings.Add(new(first, second, factor));

    /// <summary>The voltage of a node against ground for an emf of 1 V.</summary>
    public Complex Voltage(int node, double hertz) => LinearSystem.Solve(Matrix(2 * Math.PI * hertz), RightSide())[node - 1];

    private int EmfRow => nodes;

    private int CurrentRow(int inductor) => nodes + 1 + inductor;

    private Complex[] RightSide()
    {
        var right = new Complex[nodes + 1 + inductors.Count];
        right[EmfRow] = 1;
        return right;
    }

    private Complex[,] Matrix(double omega)
    {
        var size = nodes + 1 + inductors.Count;
        var matrix = new Complex[size, size];
        foreach (var element in admittances)
            Stamp(matrix, element, element.Admittance(omega));
        StampBranch(matrix, EmfRow, Driven, 0);
        for (var i = 0; i < inductors.Count; i++)
        {
            StampBranch(matrix, CurrentRow(i), inductors[i].From, inductors[i].To);
            matrix[CurrentRow(i), CurrentRow(i)] = new(0, -omega * inductors[i].Henries);
        }

        foreach (var coupling in couplings)
        {
            var mutual = coupling.Factor * Math.Sqrt(inductors[coupling.First].Henries * inductors[coupling.Second].Henries);
            matrix[CurrentRow(coupling.First), CurrentRow(coupling.Second)] = new(0, -omega * mutual);
            matrix[CurrentRow(coupling.Second), CurrentRow(coupling.First)] = new(0, -omega * mutual);
        }

        return matrix;
    }

    private static void Stamp(Complex[,] matrix, Element element, Complex admittance)
    {
        var (a, b) = (element.From - 1, element.To - 1);
        if (a >= 0) matrix[a, a] += admittance;
        if (b >= 0) matrix[b, b] += admittance;
        if (a < 0 || b < 0) return;
        matrix[a, b] -= admittance;
        matrix[b, a] -= admittance;
    }

    private static void StampBranch(Complex[,] matrix, int row, int from, int to)
    {
        if (from > 0) matrix[from - 1, row] = matrix[row, from - 1] = 1;
        if (to > 0) matrix[to - 1, row] = matrix[row, to - 1] = -1;
    }
}
