using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Reads lists of plain numbers, such as the coefficients of a rating sheet.</summary>
internal static class ListText
{
    private static readonly QuantityKind _number = QuantityKind.Number.Between(-1e9, 1e9);

    /// <summary>The numbers; empty when the list is none, too short, too long or holds something else.</summary>
    public static IReadOnlyList<double> Numbers(ReadingContext context, FileNode node, int count, string key)
    {
        if (node is not ListNode list)
        {
            context.Problems.Add(node, $"{key}: a list of {count} numbers, [1.2, 3.4, …], is expected; here is {node.What}");
            return [];
        }
        if (list.Items.Count != count)
        {
            context.Problems.Add(node, $"{key}: {count} numbers are expected; here are {list.Items.Count}");
            return [];
        }
        var numbers = new double[count];
        for (var i = 0; i < count; i++)
        {
            if (list.Items[i] is ScalarNode { Text.Length: > 0 } item) numbers[i] = ValueText.Quantity(context, item, _number, $"{key}, number {i + 1}");
            else
            {
                context.Problems.Add(list.Items[i], $"{key}, number {i + 1}: a number is expected; here is {list.Items[i].What}");
                numbers[i] = double.NaN;
            }
        }
        return numbers.Any(double.IsNaN) ? [] : numbers;
    }
}
