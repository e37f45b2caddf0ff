using System.Reflection;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Core.Generator;

/// <summary>Opens a profile by what a technician types: the name of a shipped one, or a file.</summary>
/// <remarks>
/// <c>classic-91-60hz</c>, <c>my-generator.json</c>, and either with the name of a variant after a hash sign:
/// <c>classic-91-60hz#e-69-67</c>. The shipped profiles also lie beside the program in the folder <c>generator-profiles</c>, to be
/// copied and edited.
/// </remarks>
public static class GeneratorProfileLibrary
{
    private const string Folder = "generator-profiles/";
    private const string SchemaSuffix = ".schema.json";

    private static Assembly Home => typeof(GeneratorProfileLibrary).Assembly;

    /// <summary>The names of the shipped profiles, in alphabetical order.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Home.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal) && !name.EndsWith(SchemaSuffix, StringComparison.Ordinal))
            .Select(name => Path.GetFileNameWithoutExtension(name[Folder.Length..]))
            .Order(StringComparer.Ordinal)];

    /// <summary>The text of a shipped profile's file.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    /// <exception cref="ArgumentException">There is no such profile.</exception>
    public static string TextOf(string name)
    {
        using var stream = Home.GetManifestResourceStream($"{Folder}{name}.json")
            ?? throw new ArgumentException($"No shipped profile is called {name}.", nameof(name));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Opens a profile.</summary>
    /// <param name="reference">A shipped name or a file, and perhaps <c>#variant</c>. A file of exactly this name goes first.</param>
    /// <exception cref="BenchFaultException">No such profile or variant, or the file breaks the format.</exception>
    public static GeneratorProfile Open(string reference)
    {
        var hash = File.Exists(reference) ? -1 : reference.LastIndexOf('#');
        return hash < 0 ? OpenPlain(reference) : Vary(OpenPlain(reference[..hash]), reference[(hash + 1)..]);
    }

    private static GeneratorProfile OpenPlain(string reference)
    {
        if (File.Exists(reference))
            return GeneratorProfileFile.Read(reference);
        if (Names.Contains(reference))
            return GeneratorProfileFile.Parse(TextOf(reference), $"shipped profile {reference}");
        throw new BenchFaultException(BenchFault.BadFile, $"no generator profile \"{reference}\"",
            $"a profile file, or one of the shipped names {string.Join(", ", Names)}",
            NearestName.To(reference, Names) is { } nearest ? $"Write {nearest}, if that was meant." : "Check the name and the folder.");
    }

    private static GeneratorProfile Vary(GeneratorProfile profile, string variant) => profile.Variants.ContainsKey(variant)
        ? profile.WithVariant(variant)
        : throw new BenchFaultException(BenchFault.BadFile, $"no variant \"{variant}\" of {profile.Name}",
            profile.Variants.Count == 0 ? "no variant: this profile has none" : $"one of {string.Join(", ", profile.Variants.Keys)}",
            "Correct what stands after the hash sign, or leave it out.");
}
