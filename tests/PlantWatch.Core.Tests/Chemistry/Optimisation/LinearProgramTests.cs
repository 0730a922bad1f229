using CsCheck;
using PlantWatch.Core.Chemistry;

namespace PlantWatch.Core.Tests.Chemistry.Optimisation;

public sealed class LinearProgramTests
{
    [Fact]
    public void A_textbook_diet_is_solved()
    {
        // By hand: 2x + y >= 8, x + 3y >= 9, least of 3x + 4y at the corner (3, 2): 17.
        var program = new LinearProgram(2);
        program.AtLeast([2, 1], 8);
        program.AtLeast([1, 3], 9);
        var answer = program.Minimise([3, 4]);
        Assert.Equal(LinearOutcome.Optimal, answer.Outcome);
        Assert.Equal(3, answer.At[0], 1e-9);
        Assert.Equal(2, answer.At[1], 1e-9);
        Assert.Equal(17, answer.Cost, 1e-9);
    }

    [Fact]
    public void Conditions_that_exclude_each_other_are_named_infeasible()
    {
        var program = new LinearProgram(1);
        program.AtLeast([1], 2);
        program.AtMost(0, 1);
        Assert.Equal(LinearOutcome.Infeasible, program.Minimise([1]).Outcome);
    }

    [Fact]
    public void A_cost_that_falls_without_end_is_named_unbounded()
    {
        var program = new LinearProgram(2);
        program.AtLeast([1, -1], 1);
        Assert.Equal(LinearOutcome.Unbounded, program.Minimise([-1, 0]).Outcome);
    }

    [Fact]
    public void Where_nothing_is_asked_nothing_is_taken()
    {
        var program = new LinearProgram(3);
        program.AtMost([1, 1, 1], 5);
        Assert.Equal([0, 0, 0], program.Minimise([1, 2, 3]).At);
    }

    [Fact]
    public void Beales_program_on_which_the_steepest_column_cycles_ends()
    {
        // Beale 1955, as textbooks have it (from memory): the least is -1/20 at x = (1/25, 0, 1, 0).
        var program = new LinearProgram(4);
        program.AtMost([0.25, -60, -1.0 / 25, 9], 0);
        program.AtMost([0.5, -90, -1.0 / 50, 3], 0);
        program.AtMost([0, 0, 1, 0], 1);
        var answer = program.Minimise([-0.75, 150, -0.02, 6]);
        Assert.Equal(LinearOutcome.Optimal, answer.Outcome);
        Assert.Equal(-0.05, answer.Cost, 1e-9);
    }

    // Rows come scaled: a weight is nothing, or it is no speck of dust.
    private static Gen<double> Tenths(int low, int high) => Gen.Int[low, high].Select(i => i / 10.0);

    [Fact]
    public void No_random_point_that_keeps_to_the_rows_is_cheaper_and_the_answer_keeps_to_them() =>
        (from n in Gen.Int[1, 6]
         from m in Gen.Int[1, 10]
         from weights in Tenths(-10, 10).Array[n * m]
         from inside in Tenths(0, 30).Array[n]
         from room in Tenths(0, 10).Array[m]
         from cost in Tenths(1, 20).Array[n]
         from tries in Tenths(0, 40).Array[n].Array[200]
         select (n, m, weights, inside, room, cost, tries)).Sample(c =>
        {
            var rows = Enumerable.Range(0, c.m).Select(i => c.weights[(i * c.n)..((i + 1) * c.n)]).ToArray();
            double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
            var program = new LinearProgram(c.n);
            for (var i = 0; i < c.m; i++) program.AtLeast(rows[i], Dot(rows[i], c.inside) - c.room[i]);
            var answer = program.Minimise(c.cost);
            Assert.Equal(LinearOutcome.Optimal, answer.Outcome);
            bool Keeps(double[] x, double slack) => rows.Select((r, i) => Dot(r, x) >= Dot(r, c.inside) - c.room[i] - slack).All(k => k);
            Assert.True(Keeps(answer.At, 1e-7));
            Assert.All(answer.At, x => Assert.True(x >= 0));
            Assert.True(answer.Cost <= Dot(c.cost, c.inside) + 1e-7);
            foreach (var x in c.tries)
                if (Keeps(x, 0)) Assert.True(answer.Cost <= Dot(c.cost, x) + 1e-7);
        }, iter: 20_000);
}
