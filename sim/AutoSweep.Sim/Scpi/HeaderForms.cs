namespace AutoSweep.Sim.Scpi;

/// <summary>Every way in which a header may be written, from its pattern (SCPI-1999 volume 1, 6.2).</summary>
/// <remarks>
/// In a pattern capitals are the short form, and a node in brackets may be left out:
/// <c>[SENSe:]VOLTage:AC:RANGe[:UPPer]</c>. Half-long forms are not among the answers.
/// </remarks>
internal static class HeaderForms
{
    public static IEnumerable<string> Of(string pattern)
    {
        var optional = false;
        IEnumerable<string> forms = [""];
        foreach (var node in Nodes(pattern))
        {
            if (node is "[" or "]")
            {
                optional = node == "[";
                continue;
            }

            var (before, skip) = (forms.ToList(), optional);
            forms = before.SelectMany(form => Forms(node).Select(word => form.Length == 0 ? word : $"{form}:{word}"))
                .Concat(skip ? before : []);
        }

        return forms.Where(form => form.Length > 0).Distinct();
    }

    private static string[] Nodes(string pattern) =>
        pattern.Replace("[", ":[:", StringComparison.Ordinal).Replace("]", ":]:", StringComparison.Ordinal)
            .Split(':', StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<string> Forms(string node)
    {
        var head = new string([.. node.TakeWhile(letter => !char.IsLower(letter))]);
        return new[] { head, node.ToUpperInvariant() }.Distinct();
    }
}
