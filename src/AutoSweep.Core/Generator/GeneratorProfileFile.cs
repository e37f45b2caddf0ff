namespace AutoSweep.Core.Generator;

/// <summary>Reads a generator profile from its strict JSON file.</summary>
public static class GeneratorProfileFile
{
    /// <summary>Reads and checks a profile.</summary>
    /// <param name="path">The JSON file.</param>
    /// <exception cref="BenchFaultException">The file is missing or breaks the format; says the field, what was found and expected.</exception>
    public static GeneratorProfile Read(string path) => throw new NotImplementedException(path);
}
